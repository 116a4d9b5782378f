import { describe, expect, test } from "vitest";
import { fitProbeTrace } from "../../../../kernel-lib/library/src/heat/probe/fit-probe-trace";
import { type ProbeTrace, readProbeTrace } from "../../../../kernel-lib/library/src/heat/probe/probe-trace";
import { valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { studentTQuantile } from "../../../../kernel-lib/library/src/statistics/distributions/student-t-distribution";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";
import { foods } from "../foods";

const food = foods.reference;
const body = { food, thicknessMm: 14, startC: -18, airC: 190, endMin: 11, drying: "none" as const };

/** The core of a fine run at 1 Hz, with drift that holds for a while, as a probe's error does. */
function logged(coefficientWm2K: number, noiseK: number, seed: number): ProbeTrace {
  const run = simulateSlab({ ...body, coefficientWm2K, cells: 24, tolerance: 1e-4 });
  const random = seededRandom(seed);
  let drift = 0;
  const lines = ["time_s,core_c"];
  for (let second = 0; second <= 600; second++) {
    drift = 0.98 * drift + (second === 0 ? 0 : noiseK * random.normal());
    lines.push(`${second},${(valueAt(run, "coreC", second / 60) + drift).toFixed(3)}`);
  }
  return readProbeTrace(lines.join("\n"), { file: "slab.csv" });
}

describe("fitProbeTrace", () => {
  test("finds the coefficient that made a clean trace, within 0.5 %", () => {
    const trace = logged(37, 0, 1);
    const found = fitProbeTrace({ trace, channel: "core", air: 190, food, thicknessMm: 14, drying: "none" });
    expect(Math.abs(found.coefficientWm2K / 37 - 1)).toBeLessThan(0.005);
    expect(found.converged).toBe(true);
    expect(found.residualSdK).toBeLessThan(0.5);
  });

  test("its interval holds the truth in most of twenty noisy traces", () => {
    let held = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const trace = logged(37, 0.2, seed);
      const found = fitProbeTrace({ trace, channel: "core", air: 190, food, thicknessMm: 14, drying: "none" });
      const [low, high] = found.intervalWm2K as readonly [number, number];
      if (low <= 37 && high >= 37) held++;
      expect(found.standardErrorWm2K).toBeGreaterThan(0);
    }
    expect(held).toBeGreaterThanOrEqual(16);
  });

  test("fitting the conductivity as well widens the coefficient's doubt and shows how they pull on each other", () => {
    const trace = logged(37, 0.05, 3);
    const base = { trace, channel: "core", air: 190, food, thicknessMm: 14, drying: "none" as const };
    const one = fitProbeTrace(base);
    const both = fitProbeTrace({ ...base, fitConductivity: true });
    expect(both.standardErrorWm2K as number).toBeGreaterThan(one.standardErrorWm2K as number);
    expect(both.correlation).toBeLessThan(-0.5);
    expect(Math.abs(both.conductivityFactor - 1)).toBeLessThan(
      4 * (both.conductivityFactorStandardError as number) + 0.02,
    );
  });

  test("a freezing curve gives the freezer's coefficient, with its air as logged", () => {
    const freezing = {
      food,
      thicknessMm: 12,
      startC: 6,
      coefficientWm2K: 9,
      coefficientBelowWm2K: 4.5,
      drying: "none" as const,
    };
    const airC = [
      { timeMin: 0, airC: -15 },
      { timeMin: 30, airC: -18 },
      { timeMin: 240, airC: -18 },
    ];
    const run = simulateSlab({ ...freezing, airC, endMin: 240, cells: 24, tolerance: 1e-4 });
    const lines = ["time_min,core_c,air_c"];
    for (let minute = 0; minute <= 240; minute += 2)
      lines.push(
        `${minute},${valueAt(run, "coreC", minute).toFixed(2)},${minute < 30 ? (-15 - minute / 10).toFixed(2) : -18}`,
      );
    const trace = readProbeTrace(lines.join("\n"), { file: "pan.csv" });
    const found = fitProbeTrace({
      trace,
      channel: "core",
      air: "air",
      food,
      thicknessMm: 12,
      belowShare: 0.5,
      drying: "none",
    });
    expect(Math.abs(found.coefficientWm2K / 9 - 1)).toBeLessThan(0.02);
  });

  test("uses only the stretch that it is told, from where the food was still even all through", () => {
    const trace = logged(37, 0, 1);
    const waited = [
      ...Array.from({ length: 120 }, (_, second) => second / 60),
      ...trace.timeMin.map((time) => time + 2),
    ];
    const cores = [...Array.from({ length: 120 }, () => -18), ...trace.channels[0].temperatureC];
    const later = { ...trace, timeMin: waited, channels: [{ name: "core", temperatureC: cores }] };
    const base = { trace: later, channel: "core", air: 190, food, thicknessMm: 14, drying: "none" as const };
    const found = fitProbeTrace({ ...base, fromMin: 2 });
    expect(Math.abs(found.coefficientWm2K / 37 - 1)).toBeLessThan(0.005);
    expect(found.timeMin[0]).toBeGreaterThan(0);
    expect(found.timeMin[found.n - 1]).toBeCloseTo(10, 1);
    const part = fitProbeTrace({ ...base, fromMin: 2, toMin: 11 });
    expect(Math.abs(part.coefficientWm2K / 37 - 1)).toBeLessThan(0.01);
    expect(part.timeMin[part.n - 1]).toBeLessThanOrEqual(9);
    // with the wait taken for heating it would be far too low
    expect(fitProbeTrace(base).coefficientWm2K).toBeLessThan(33);
    expect(() => fitProbeTrace({ ...base, fromMin: 13 })).toThrow("fromMin must be between 0 and 12");
    expect(() => fitProbeTrace({ ...base, fromMin: 3, toMin: 2 })).toThrow("toMin must be between 3");
  });

  test("takes at most 60 readings, each the mean of what lies about it, and the run at the end passes through them", () => {
    const trace = logged(37, 0.05, 5);
    const found = fitProbeTrace({ trace, channel: "core", air: 190, food, thicknessMm: 14, drying: "none" });
    // 601 readings in blocks of 11, the first being the start
    expect(found.n).toBe(55);
    expect(found.timeMin[0]).toBeCloseTo(6 / 60, 9);
    const { temperatureC } = trace.channels[0];
    expect(found.coreC[0]).toBeCloseTo(temperatureC.slice(1, 12).reduce((sum, core) => sum + core, 0) / 11, 9);
    const off = found.coreC.map((core, at) => core - valueAt(found.run, "coreC", found.timeMin[at]));
    const rss = off.reduce((sum, residual) => sum + residual * residual, 0);
    expect(found.residualSdK).toBeCloseTo(Math.sqrt(rss / (found.n - 1)), 3);
  });

  test("skips readings that the logger missed", () => {
    const trace = logged(37, 0, 1);
    const holes = trace.channels[0].temperatureC.map((core, second) => (second % 3 === 1 ? Number.NaN : core));
    const base = { channel: "core", air: 190, food, thicknessMm: 14, drying: "none" as const };
    const found = fitProbeTrace({ ...base, trace: { ...trace, channels: [{ name: "core", temperatureC: holes }] } });
    expect(Math.abs(found.coefficientWm2K / 37 - 1)).toBeLessThan(0.005);
    expect(found.coreC.every(Number.isFinite)).toBe(true);
  });

  test("widens its standard error by how readings follow each other, and its interval by Student's t of what is left", () => {
    const trace = logged(37, 0.2, 2);
    const found = fitProbeTrace({ trace, channel: "core", air: 190, food, thicknessMm: 14, drying: "none" });
    const residuals = found.coreC.map((core, at) => core - valueAt(found.run, "coreC", found.timeMin[at]));
    const mean = residuals.reduce((sum, residual) => sum + residual, 0) / found.n;
    const r =
      residuals.slice(1).reduce((sum, residual, at) => sum + (residual - mean) * (residuals[at] - mean), 0) /
      residuals.reduce((sum, residual) => sum + (residual - mean) ** 2, 0);
    expect(found.autocorrelation).toBeCloseTo(Math.min(0.95, r + (1 + 3 * r) / found.n), 3);
    expect(found.autocorrelation).toBeGreaterThan(0.3);
    const [low, high] = found.intervalWm2K as readonly [number, number];
    // even about the estimate on the logarithm
    expect(Math.sqrt(low * high)).toBeCloseTo(found.coefficientWm2K, 9);
    const left = Math.round((found.n - 1) * ((1 - found.autocorrelation) / (1 + found.autocorrelation)));
    const reach = (Math.log(high / low) / 2) * found.coefficientWm2K;
    expect(reach / (found.standardErrorWm2K as number)).toBeCloseTo(studentTQuantile(0.975, left), 6);
    // the plain standard error by the slope of the core on the coefficient
    const core = (h: number): number[] => {
      const run = simulateSlab({ ...body, coefficientWm2K: h });
      return found.timeMin.map((time) => valueAt(run, "coreC", time));
    };
    const [less, more] = [core(0.98 * found.coefficientWm2K), core(1.02 * found.coefficientWm2K)];
    const squares = more.reduce(
      (sum, value, at) => sum + ((value - less[at]) / (0.04 * found.coefficientWm2K)) ** 2,
      0,
    );
    const plain = found.residualSdK / Math.sqrt(squares);
    const widening = Math.sqrt((1 + found.autocorrelation) / (1 - found.autocorrelation));
    expect((found.standardErrorWm2K as number) / (plain * widening)).toBeCloseTo(1, 1);
  });

  test("says where the trace has a gap in the stretch, and where the core is no such body", () => {
    const trace = logged(37, 0, 1);
    const gaps = [
      { fromMin: 1, toMin: 2 },
      { fromMin: 5, toMin: 6 },
      { fromMin: 9, toMin: 9.5 },
    ];
    const base = {
      trace: { ...trace, gaps },
      channel: "core",
      air: 190,
      food,
      thicknessMm: 14,
      drying: "none" as const,
    };
    const told = fitProbeTrace({ ...base, toMin: 9 }).notices.filter((notice) => notice.includes("gap"));
    expect(told).toEqual(["The trace has a gap from 1.0 to 2.0 min.", "The trace has a gap from 5.0 to 6.0 min."]);
    const later = fitProbeTrace({ ...base, toMin: 9.2 }).notices.filter((notice) => notice.includes("gap"));
    expect(later).toHaveLength(3);
    const odd = trace.channels[0].temperatureC.map((core, second) => core + (Math.floor(second / 60) % 2 ? 12 : 0));
    const { notices } = fitProbeTrace({
      ...base,
      trace: { ...trace, channels: [{ name: "core", temperatureC: odd }] },
    });
    expect(notices.some((notice) => /The core lies \d+\.\d K about the run/.test(notice))).toBe(true);
  });

  test("unknown channels and traces that run the wrong way are refused", () => {
    const trace = logged(37, 0, 1);
    const base = { trace, channel: "core", air: 190, food, thicknessMm: 14 };
    expect(() => fitProbeTrace({ ...base, channel: "cor" })).toThrow('channel must be one of core, got "cor"');
    expect(() => fitProbeTrace({ ...base, air: -30 })).toThrow("must move by more than 2 K towards the air at -30 °C");
    expect(() => fitProbeTrace({ ...base, fromMin: 9.99 })).toThrow("must hold at least 6 readings");
    const silent = { ...trace, channels: [{ name: "core", temperatureC: trace.timeMin.map(() => Number.NaN) }] };
    expect(() => fitProbeTrace({ ...base, trace: silent })).toThrow("between fromMin and toMin, got 0");
  });
});
