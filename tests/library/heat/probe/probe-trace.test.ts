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

  test("passes over a byte-order mark, empty lines and notes anywhere, and counts their rows", () => {
    const text = '\ufeff# logger 7\n\n"time_s","core_c"\n0,1\n# paused\n\n2,-3\n4,x\n';
    expect(() => readProbeTrace(text, { file })).toThrow(
      'stick.csv row 8, column core_c must be a number or empty, got "x"',
    );
    const trace = readProbeTrace(text.replace("x", "5"), { file });
    expect(trace.channels).toEqual([{ name: "core", temperatureC: [1, -3, 5] }]);
    expect(trace.timeMin).toEqual([0, 2 / 60, 4 / 60]);
    expect(readProbeTrace("time_s,core_c\n0,1\n2,3\n# end", { file }).timeMin).toHaveLength(2);
    // the last row may lack its end
    expect(readProbeTrace("time_s,core_c\n0,1\n2,3", { file }).channels[0].temperatureC).toEqual([1, 3]);
  });

  test("reads numbers as a person would: signs, points, exponents, up to 15 digits and beyond", () => {
    const cells = ["-18", "5.", ".5", "-.25", "0.125", "1e1", "12.3456789012345", "+7", "1.23456789012345678"];
    const trace = readProbeTrace(rows("time_s,core_c", ...cells.map((cell, at) => `${at},${cell}`)), { file });
    expect(trace.channels[0].temperatureC).toEqual(cells.map(Number));
    for (const cell of [".", "-", "1.2.3", "1-2", "--", "NaN", "n/a", "NA", "null", "OPEN", "err"]) {
      const read = () =>
        readProbeTrace(rows("time_s,core_c", "0,1", `1,${cell}`, "2,3"), { file }).channels[0].temperatureC[1];
      if ([".", "1.2.3", "1-2"].includes(cell)) expect(read, cell).toThrow("must be a number or empty");
      else expect(read(), cell).toBeNaN();
    }
  });

  test("takes times in the unit of their heading, of the option, or as seconds; by the minute, hour, clock and date", () => {
    const last = (heading: string, cells: string[], timeUnit?: "s" | "min" | "h"): number =>
      readProbeTrace(rows(`${heading},core_c`, ...cells.map((cell, at) => `${cell},${at}`)), { file, timeUnit })
        .timeMin[1];
    for (const [heading, minutes] of [
      ["time_sec", 0.5],
      ["elapsed (seconds)", 0.5],
      ["time [min]", 30],
      ["Time minutes", 30],
      ["time_hours", 1800],
      ["time", 0.5],
    ] as const)
      expect(last(heading, ["0", "30"]), heading).toBeCloseTo(minutes, 9);
    expect(last("time", ["0", "30"], "min")).toBe(30);
    expect(last("time", ["0", "30"], "h")).toBe(1800);
    expect(last("time_s", ["0", "30"], "min")).toBe(0.5);
    expect(last("clock", ["1:00", "1:02"])).toBe(2);
    expect(last("time", ["00:01:00", "00:01:30.5"])).toBeCloseTo(30.5 / 60, 9);
    expect(() => last("time", ["12:00", "11:00"])).toThrow("must be later than the row before it");
    expect(last("time", ["13:00", "00:30"])).toBe(690);
    expect(last("date", ['"2026-03-01 08:00:00"', '"2026-03-01 08:05:00"'])).toBeCloseTo(5, 9);
    expect(() => last("time", ["1:2", "2:3"])).toThrow("must be a time");
  });

  test("two midnights are two days", () => {
    const trace = readProbeTrace(rows("time,core_c", "20:00,1", "04:00,2", "20:00,3", "04:00,4"), { file });
    expect(trace.timeMin).toEqual([0, 480, 1440, 1920]);
  });

  test("takes headings apart however the unit is set off, and leaves empty ones out", () => {
    const names = (heading: string, temperatureUnit?: "C" | "F"): (string | number)[] => {
      const trace = readProbeTrace(rows(`time_s,${heading}`, "0,50", "1,51"), { file, temperatureUnit });
      return trace.channels.flatMap(({ name, temperatureC }) => [name, Number(temperatureC[0].toFixed(1))]);
    };
    for (const heading of ["core_c", "core (C)", "core (°C)", "core [deg C]", "core degC", "core °C", "core c"])
      expect(names(heading), heading).toEqual(["core", 50]);
    for (const heading of ["core_f", "core (°F)", "core deg F", "core_F"])
      expect(names(heading), heading).toEqual(["core", 10]);
    expect(names("stick", "F")).toEqual(["stick", 10]);
    expect(names("stick", "C")).toEqual(["stick", 50]);
    expect(names("core_f", "C")).toEqual(["core", 10]);
    expect(() => names("mac")).toThrow("column mac must name its unit");
    const trace = readProbeTrace("time_s,,core_c\n0,7,1\n1,,2\n", { file });
    expect(trace.channels).toEqual([{ name: "core", temperatureC: [1, 2] }]);
    expect(() => readProbeTrace("time_s,\n0,7\n1,8\n", { file })).toThrow(
      "must have a temperature column beside the time",
    );
    expect(() => names("core", "K" as "C")).toThrow('temperatureUnit must be "C" or "F", got "K"');
  });

  test("knows its usual interval by the median, and a gap from five of them or from the pause it is told", () => {
    const at = (...seconds: number[]) => rows("time_s,core_c", ...seconds.map((second) => `${second},20`));
    const trace = readProbeTrace(at(0, 2, 4, 6, 16, 18, 29), { file });
    expect(trace.intervalS).toBeCloseTo(2, 9);
    expect(trace.gaps).toEqual([{ fromMin: 18 / 60, toMin: 29 / 60 }]);
    expect(readProbeTrace(at(0, 2, 4, 6, 16, 18, 29), { file, longestPauseS: 9 }).gaps).toHaveLength(2);
    expect(readProbeTrace(at(0, 2, 4, 6, 16, 18, 29), { file, longestPauseS: 11.5 }).gaps).toHaveLength(0);
    expect(() => readProbeTrace(at(0, 2), { file, longestPauseS: 0 })).toThrow("longestPauseS must be > 0 s");
  });

  test("a channel without a reading is refused, and one too cold for °F doubted", () => {
    expect(() => readProbeTrace(rows("time_s,core_c", "0,", "1,"), { file })).toThrow('must hold readings, got "none"');
    const cold = (first: number) => readProbeTrace(rows("time_s,core_f", `0,${first}`, "1,10"), { file }).notices;
    expect(cold(-77)).toEqual(["stick.csv, column core_f: falls to -60.6 °C; was it °C read as °F?"]);
    expect(cold(-75)).toEqual([]);
  });

  test("food may read 108 °C and air 300 °C, by the channel's name, and no more", () => {
    const read = (name: string, hottest: number) => () =>
      readProbeTrace(rows(`time_s,${name}_c`, "0,70", `1,${hottest}`), { file }).notices;
    expect(read("core", 108)()).toEqual([]);
    expect(read("core", 108.1)).toThrow("which moist food cannot");
    for (const name of ["air", "Oven", "surface", "crust", "chamber", "set point"])
      expect(read(name, 300)(), name).toEqual([]);
    expect(read("air", 300.1)).toThrow("which the air of an appliance cannot");
  });

  test("only food that was frozen, thaws near 30 and gets hot is doubted for lingering there", () => {
    const plateau = (low: number, linger: number, high: number) =>
      readProbeTrace(
        rows(
          "time_min,core_c",
          ...Array.from({ length: 100 }, (_, at) => `${at},${at === 0 ? low : at <= linger ? 30 : high}`),
        ),
        { file },
      ).notices.length;
    expect(plateau(0, 20, 60)).toBe(1);
    expect(plateau(0, 15, 60)).toBe(0);
    expect(plateau(0, 16, 60)).toBe(1);
    expect(plateau(20, 20, 60)).toBe(0);
    expect(plateau(19.9, 20, 60)).toBe(1);
    expect(plateau(0, 20, 36)).toBe(0);
    expect(plateau(0, 20, 36.1)).toBe(1);
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
