import { describe, expect, test } from "vitest";
import { timeWhen, valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const frozenSlab = { food: foods.reference, thicknessMm: 10, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 12 };
const run = simulateSlab(frozenSlab);

test("timeWhen and valueAt undo each other", () => {
  for (const column of ["coreC", "surfaceC", "meanC"] as const)
    for (const value of [-10, 20, 60])
      expect(valueAt(run, column, timeWhen(run, { column, value }))).toBeCloseTo(value, 6);
});

test("the slopes of a run are those of its values", () => {
  const at = timeWhen(run, { column: "coreC", value: 50 });
  const row = run.timeMin.findIndex((time) => time >= at);
  const slope =
    (valueAt(run, "coreC", run.timeMin[row] + 0.01) - valueAt(run, "coreC", run.timeMin[row] - 0.01)) / 0.02;
  expect(Math.abs(run.coreRateKMin[row] / slope - 1)).toBeLessThan(0.02);
});

test("ice and core agree: none is left once the core is above its freezing point", () => {
  expect(run.icePercent[0]).toBeCloseTo(64.8 * (1 - 1 / 18), 1);
  const thawed = timeWhen(run, { column: "coreC", value: -0.5 });
  expect(valueAt(run, "icePercent", thawed + 0.2)).toBe(0);
});

test("the profile runs from face to face and holds the core in its middle", () => {
  const row = 20;
  const heights = run.profile.heightMm[row];
  expect(heights[0]).toBeCloseTo(0, 6);
  expect(heights[heights.length - 1]).toBeCloseTo(10, 6);
  expect(run.profile.temperatureC[row][(heights.length - 1) / 2]).toBeCloseTo(run.coreC[row], 9);
});

test("what a run never does is refused with how far it got", () => {
  expect(() => timeWhen(run, { column: "coreC", value: 140 })).toThrow(
    /coreC must pass 140 °C within the run of 12.0 min \(it went from -18.00 to \d+\.\d+\)/,
  );
  expect(() => valueAt(run, "coreC", 13)).toThrow("valueAt: timeMin must lie within the run, 0 to 12.00 min, got 13");
});

describe("mid-plane and bottom face", () => {
  const onPan = { food: foods.reference, thicknessMm: 12, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 12 };

  test("are core and top face of a slab that is heated alike", () => {
    expect(run.midPlaneC).toEqual(run.coreC);
    expect(run.surfaceBelowC).toEqual(run.surfaceC);
  });

  test("lag behind in a slab on a pan, and are read at a time like every column", () => {
    const weak = simulateSlab({ ...onPan, coefficientBelowWm2K: 25 });
    for (const timeMin of [3, 6, 9]) {
      const [top, bottom, middle, core] = (["surfaceC", "surfaceBelowC", "midPlaneC", "coreC"] as const).map((column) =>
        valueAt(weak, column, timeMin),
      );
      expect(bottom).toBeLessThan(top);
      expect(middle).toBeGreaterThanOrEqual(core);
      expect(middle).toBeLessThan(top);
    }
    const at = timeWhen(weak, { column: "surfaceBelowC", value: 60 });
    expect(valueAt(weak, "surfaceBelowC", at)).toBeCloseTo(60, 6);
    // film and food carry the same heat at the bottom
    const row = weak.timeMin.findIndex((time) => time >= 9);
    const [heights, temperatures] = [weak.profile.heightMm[row], weak.profile.temperatureC[row]];
    const inwards = (0.49 * (temperatures[0] - temperatures[1])) / ((heights[1] - heights[0]) / 1000);
    expect((25 * (204 - weak.surfaceBelowC[row])) / inwards).toBeCloseTo(1, 6);
  });

  test("of a slab on an insulator are middle and core of one twice as thick", () => {
    const half = simulateSlab({ ...onPan, coefficientBelowWm2K: 0, drying: "none", cells: 16 });
    const whole = simulateSlab({ ...onPan, thicknessMm: 24, drying: "none", cells: 32 });
    expect(valueAt(half, "surfaceBelowC", 10)).toBeCloseTo(valueAt(whole, "coreC", 10), 1);
    const row = whole.timeMin.findIndex((time) => time >= 10);
    const { heightMm, temperatureC } = whole.profile;
    const next = heightMm[row].findIndex((height) => height >= 18);
    const share = (18 - heightMm[row][next - 1]) / (heightMm[row][next] - heightMm[row][next - 1]);
    const wanted = temperatureC[row][next - 1] + share * (temperatureC[row][next] - temperatureC[row][next - 1]);
    expect(Math.abs(valueAt(half, "midPlaneC", whole.timeMin[row]) - wanted)).toBeLessThan(0.15);
  });

  test("the mid-plane in a dry crust is between its surface and its front", () => {
    const dried = simulateSlab({ ...onPan, thicknessMm: 4, coefficientBelowWm2K: 0, endMin: 60 });
    const row = dried.crustMm.findIndex((crust) => crust > 3);
    expect(dried.midPlaneC[row]).toBeGreaterThan(100);
    expect(dried.midPlaneC[row]).toBeLessThan(dried.surfaceC[row]);
    // 2 mm deep in the crust
    const share = 2 / dried.crustMm[row];
    expect(dried.midPlaneC[row]).toBeCloseTo(dried.surfaceC[row] + share * (100 - dried.surfaceC[row]), 6);
  });
});

test("a run says when its core has thawed: later than its first cells, and null where it does not", () => {
  const thawedMin = run.thawedMin as number;
  expect(valueAt(run, "coreC", thawedMin - 0.1)).toBeLessThanOrEqual(-1);
  expect(valueAt(run, "coreC", thawedMin + 0.3)).toBeGreaterThan(0);
  expect(simulateSlab({ ...frozenSlab, endMin: 1 }).thawedMin).toBeNull();
  expect(simulateSlab({ ...frozenSlab, startC: 5 }).thawedMin).toBeNull();
});
