import { describe, expect, test } from "vitest";
import { readProbeTrace } from "../../../../kernel-lib/library/src/heat/probe/probe-trace";

const rows = (...lines: string[]): string => `${lines.join("\n")}\n`;
const file = "stick.csv";

describe("readProbeTrace", () => {
  test("reads times, channels and units", () => {
    const trace = readProbeTrace(rows("time_s,core_c,air_f", "0,-18.0,70", "2,-17.9,", "4,-17.5,75"), { file });
    expect(trace.timeMin).toEqual([0, 2 / 60, 4 / 60]);
    expect(trace.channels.map(({ name }) => name)).toEqual(["core", "air"]);
    expect(trace.channels[1].temperatureC[0]).toBeCloseTo(21.1111, 4);
    expect(trace.channels[1].temperatureC[1]).toBeNaN();
    expect(trace.notices).toEqual(["stick.csv, column air_f: 1 of 3 readings are missing."]);
    expect(trace.intervalS).toBeCloseTo(2, 6);
  });

  test("reads semicolons with decimal commas, tabs, notes, carriage returns, spelled-out headings", () => {
    const comma = readProbeTrace("# logger 7\r\nTime (min);Core (°C)\r\n0;-18,5\r\n1;-17,25\r\n", { file });
    expect(comma.channels[0]).toEqual({ name: "Core", temperatureC: [-18.5, -17.25] });
    const tabs = readProbeTrace(rows("time_h\tcore deg F", "0\t0", "1\t32"), { file });
    expect(tabs.timeMin).toEqual([0, 60]);
    expect(tabs.channels[0].temperatureC[1]).toBeCloseTo(0, 9);
  });

  test("reads clock times over midnight and dates", () => {
    const clock = readProbeTrace(rows("time,core_c", "23:59:30,1", "00:00:30,2"), { file });
    expect(clock.timeMin[1]).toBeCloseTo(1, 9);
    const dates = readProbeTrace(rows("timestamp,core_c", "2026-03-01T08:00:00,1", "2026-03-01T08:00:30,2"), { file });
    expect(dates.timeMin[1]).toBeCloseTo(0.5, 9);
  });

  test("finds gaps", () => {
    const lines = Array.from({ length: 100 }, (_, second) => `${second < 50 ? second : second + 300},20`);
    const trace = readProbeTrace(rows("time_s,core_c", ...lines), { file });
    expect(trace.gaps).toHaveLength(1);
    expect(trace.gaps[0].fromMin).toBeCloseTo(49 / 60, 9);
    expect(trace.gaps[0].toMin).toBeCloseTo(350 / 60, 9);
    expect(trace.notices[0]).toBe("stick.csv: no readings from 0.82 to 5.83 min.");
  });

  test("°F read as °C is caught, and named", () => {
    const slip = rows("time_s,core_c", "0,-0.4", "60,120", "120,165.2");
    expect(() => readProbeTrace(slip, { file })).toThrow(
      "stick.csv, column core_c must be in the unit it names: it reaches 165.2 °C, which moist food cannot; read as °F it is 74.0 °C",
    );
    expect(readProbeTrace(slip, { file, temperatureUnit: "C" }).notices[0]).toContain("read as °F it is 74.0 °C");
    expect(() => readProbeTrace(rows("time_s,air_c", "0,70", "60,400"), { file })).toThrow("read as °F it is 204.4 °C");
    expect(readProbeTrace(rows("time_s,air_c", "0,70", "60,204"), { file }).notices).toEqual([]);
    const plateau = Array.from(
      { length: 60 },
      (_, minute) => `${minute},${minute < 10 ? 2 * minute : minute < 40 ? 30 : minute}`,
    );
    expect(readProbeTrace(rows("time_min,core_c", ...plateau), { file }).notices[0]).toContain("lingers near 30 °C");
  });

  test("bad rows name file, row, column and what was expected", () => {
    expect(() => readProbeTrace(rows("time_s,core_c", "0,1", "1,warm"), { file })).toThrow(
      'stick.csv row 3, column core_c must be a number or empty, got "warm"',
    );
    expect(() => readProbeTrace(rows("time_s,core_c", "0,1", "0,2"), { file })).toThrow(
      'stick.csv row 3, column time_s must be later than the row before it, got "0,2"',
    );
    expect(() => readProbeTrace(rows("time_s,core_c", "0,1", "x,2"), { file })).toThrow(
      'row 3, column time_s must be a time, got "x"',
    );
    expect(() => readProbeTrace(rows("time_s,core_c", "0,1", "1"), { file })).toThrow(
      "row 3 must hold 2 cells as the headings do, got 1",
    );
    expect(() => readProbeTrace(rows("time_s,core_c", "0,1", "1,2,3"), { file })).toThrow("row 3 must hold 2 cells");
    expect(() => readProbeTrace(rows("time_s,core", "0,1", "1,2"), { file })).toThrow("column core must name its unit");
    expect(() => readProbeTrace(rows("core_c", "1"), { file })).toThrow("must have a time column");
    expect(() => readProbeTrace(rows("time_s,core_c", "0,1"), { file })).toThrow("must hold at least two rows");
  });

  test("hours of readings at 1 Hz come through whole", () => {
    const count = 50_000;
    const lines = ["time_s,core_c,surface_c,air_c"];
    for (let second = 0; second < count; second++)
      lines.push(`${second},${(20 + second / 1000).toFixed(2)},60.0,180.0`);
    const trace = readProbeTrace(lines.join("\n"), { file });
    expect(trace.timeMin).toHaveLength(count);
    expect(trace.channels[0].temperatureC[count - 1]).toBeCloseTo(70, 1);
    expect(trace.gaps).toEqual([]);
  });
});
