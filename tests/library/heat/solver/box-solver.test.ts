import { describe, expect, it } from "vitest";
import { simulatePiece } from "../../../../kernel-lib/library/src/heat/solver/simulate-piece";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;
/** Ice in a food at one temperature (share of its mass): what its latent heat has frozen, by the freezing-point law. */
const iceAt = (temperatureC: number): number =>
  temperatureC < food.freezingPointC ? (food.latentKJkg / 333.6) * (1 - food.freezingPointC / temperatureC) : 0;

describe("the ice that a run records", () => {
  it("is that of its start, in a slab and in a piece with sides", () => {
    const common = { food, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 1 };
    const runs = [
      simulateSlab({ ...common, thicknessMm: 10 }),
      simulateSlab({ ...common, thicknessMm: 10, coefficientBelowWm2K: 10 }),
      simulatePiece({ ...common, lengthMm: 40, widthMm: 30, thicknessMm: 10 }),
    ];
    for (const run of runs) expect(run.icePercent[0]).toBeCloseTo(100 * iceAt(-18), 8);
  });
  it("follows the temperature where that is the same everywhere: a thin slab in a weak draught", () => {
    const run = simulateSlab({ food, thicknessMm: 2, startC: -18, airC: -4, coefficientWm2K: 0.5, endMin: 240 });
    const last = run.timeMin.length - 1;
    expect(Math.abs(run.coreC[last] - run.surfaceC[last])).toBeLessThan(0.01);
    expect(run.coreC[last]).toBeGreaterThan(-17);
    run.timeMin.forEach((_, row) => {
      expect(run.icePercent[row] / 100).toBeCloseTo(iceAt(run.meanC[row]), 3);
    });
  });
  it("is the mean over the slab where it is not: what a profile through it holds", () => {
    const run = simulateSlab({ food, thicknessMm: 12, startC: -18, airC: 20, coefficientWm2K: 60, endMin: 8 });
    const last = run.timeMin.length - 1;
    const heights = run.profile.heightMm[last];
    const ice = run.profile.temperatureC[last].map(iceAt);
    expect(ice.filter((share) => share > 0.1).length).toBeGreaterThan(3);
    expect(ice[0]).toBe(0);
    let sum = 0;
    for (let at = 1; at < heights.length; at++) sum += 0.5 * (ice[at] + ice[at - 1]) * (heights[at] - heights[at - 1]);
    expect(run.icePercent[last] / 100 / (sum / 12)).toBeCloseTo(1, 1);
  });
  it("is gone once all of it has thawed, and never grows on the way", () => {
    const run = simulateSlab({ food, thicknessMm: 10, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 8 });
    const last = run.timeMin.length - 1;
    expect(run.coreC[last]).toBeGreaterThan(0);
    expect(run.icePercent[last]).toBe(0);
    for (let row = 1; row <= last; row++) {
      expect(run.icePercent[row]).toBeLessThanOrEqual(run.icePercent[row - 1] + 1e-12);
    }
  });
});
