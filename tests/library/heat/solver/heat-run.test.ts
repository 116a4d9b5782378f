import { expect, test } from "vitest";
import { timeWhen, valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const run = simulateSlab({
  food: foods.reference,
  thicknessMm: 10,
  startC: -18,
  airC: 204,
  coefficientWm2K: 40,
  endMin: 12,
});

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
