import { describe, expect, test } from "vitest";
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

  test("warm freezers, thawed targets and food without ice are refused", () => {
    expect(() => freezingTimePham({ ...slab, airC: -9 })).toThrow("the centre tends to -9 °C");
    expect(() => freezingTimePham({ ...slab, centreC: 0 })).toThrow("must be below the freezing point of -1 °C, got 0");
    expect(() => freezingTimePham({ ...slab, food: foods.withoutIce })).toThrow("must hold water that freezes");
  });
});
