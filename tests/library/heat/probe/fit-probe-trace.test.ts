import { describe, expect, test } from "vitest";
import { fitProbeTrace } from "../../../../kernel-lib/library/src/heat/probe/fit-probe-trace";
import { type ProbeTrace, readProbeTrace } from "../../../../kernel-lib/library/src/heat/probe/probe-trace";
import { valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
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

  test("unknown channels and traces that run the wrong way are refused", () => {
    const trace = logged(37, 0, 1);
    const base = { trace, channel: "core", air: 190, food, thicknessMm: 14 };
    expect(() => fitProbeTrace({ ...base, channel: "cor" })).toThrow('channel must be one of core, got "cor"');
    expect(() => fitProbeTrace({ ...base, air: -30 })).toThrow("must move by more than 2 K towards the air at -30 °C");
    expect(() => fitProbeTrace({ ...base, fromMin: 9.99 })).toThrow("must hold at least 6 readings");
  });
});
