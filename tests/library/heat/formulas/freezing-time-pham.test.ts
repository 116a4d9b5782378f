import { describe, expect, test } from "vitest";
import { conductivityAt } from "../../../../kernel-lib/library/src/food/thermal/conductivity-curve";
import { iceFraction } from "../../../../kernel-lib/library/src/food/thermal/ice-fraction";
import { freezingTimeClelandEarle } from "../../../../kernel-lib/library/src/heat/formulas/freezing-time-cleland-earle";
import { freezingTimePham } from "../../../../kernel-lib/library/src/heat/formulas/freezing-time-pham";
import { timeWhen } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;

describe("freezingTimePham", () => {
  const slab = { food, thicknessMm: 20, coefficientWm2K: 60, airC: -30, startC: 10 };

  test("inside its range a correlation is not flagged and meets the solver within 10 %", () => {
    const solved = timeWhen(simulateSlab({ ...slab, endMin: 300, stopCoreC: -10.5 }), { column: "coreC", value: -10 });
    expect(Math.abs(freezingTimePham(slab).timeMin / solved - 1)).toBeLessThan(0.1);
    expect(Math.abs(freezingTimeClelandEarle(slab).timeMin / solved - 1)).toBeLessThan(0.1);
    expect(freezingTimePham(slab).extrapolation).toBe(false);
  });

  test("a shape freezes as many times faster as its equivalent dimension says, which is 1 to 3", () => {
    const brick = freezingTimePham({ ...slab, equivalentDimension: 2.5 });
    expect(freezingTimePham(slab).timeMin / brick.timeMin).toBeCloseTo(2.5, 12);
    expect(() => freezingTimePham({ ...slab, equivalentDimension: 3.1 })).toThrow("must be between 1 and 3");
  });

  test("has its numbers by hand, for the reference food", () => {
    const { biot, stefan, plank } = freezingTimePham(slab);
    const meanC = 1.8 + 0.263 * -10 + 0.105 * -30;
    const heat = iceFraction(food, -10) * 333.6 + 2 * (meanC + 10);
    expect(stefan / ((2 * 29) / heat)).toBeCloseTo(1, 4);
    expect(plank / ((3.5 * 11) / heat)).toBeCloseTo(1, 4);
    expect(biot).toBeCloseTo((60 * 0.02) / (2 * conductivityAt(food, -10)), 9);
  });

  test("warm freezers, thawed targets and food without ice are refused", () => {
    expect(() => freezingTimePham({ ...slab, airC: -9 })).toThrow("the centre tends to -9 °C");
    expect(() => freezingTimePham({ ...slab, centreC: 0 })).toThrow("must be below the freezing point of -1 °C, got 0");
    expect(() => freezingTimePham({ ...slab, food: foods.withoutIce })).toThrow("must hold water that freezes");
  });

  test("whatever the freezing point, in a −18 °C freezer it is at most 3 % short of the solver, and says where it ends", () => {
    for (const freezingPointC of [-0.5, -1, -1.7, -2.4, -3])
      for (const [thicknessMm, coefficientWm2K] of [
        [10, 8],
        [25, 25],
        [40, 60],
      ]) {
        const pan = { food: { ...food, freezingPointC }, thicknessMm, coefficientWm2K, airC: -18, startC: 5 };
        const run = simulateSlab({ ...pan, endMin: 2000, stopCoreC: -10.5, drying: "none" });
        const short = freezingTimePham(pan).timeMin / timeWhen(run, { column: "coreC", value: -10 }) - 1;
        expect(short).toBeLessThan(0);
        expect(short).toBeGreaterThan(-0.03);
      }
    const salty = freezingTimePham({ ...slab, food: { ...food, freezingPointC: -5 } });
    expect(salty.extrapolation).toBe(true);
    expect(salty.notes).toContain("The freezing point of -5.00 °C is outside -3 to -0.4 °C.");
  });
});
