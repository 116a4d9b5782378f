import { describe, expect, test } from "vitest";
import { coreTimeClosedForm } from "../../../../kernel-lib/library/src/heat/formulas/core-time-closed-form";
import { timeWhen } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;

describe("coreTimeClosedForm", () => {
  test("is a·L + b·L², both shares falling with the air's driving difference", () => {
    const short = coreTimeClosedForm({ food, thicknessMm: 12, coefficientWm2K: 40, airC: 190 });
    expect(short.timeMin).toBeCloseTo(short.perMm * 12 + short.perMm2 * 144, 9);
    expect(short.limitC).toBe(74);
    expect(short.caution).toContain("probe");
    const twice = coreTimeClosedForm({ food, thicknessMm: 12, coefficientWm2K: 80, airC: 190 });
    expect(twice.perMm).toBeCloseTo(short.perMm / 2, 9);
    expect(twice.perMm2).toBeCloseTo(short.perMm2, 9);
    expect(twice.extrapolation).toBe(true);
    expect(short.extrapolation).toBe(false);
  });

  test("from chilled it follows the solver within its stated worst error", () => {
    for (const thicknessMm of [6.35, 12.7, 19])
      for (const coefficientWm2K of [30, 60]) {
        const slab = { food, thicknessMm, coefficientWm2K, airC: 190, startC: 4 };
        const short = coreTimeClosedForm(slab);
        const run = simulateSlab({ ...slab, endMin: 60, stopCoreC: 74, drying: "boiling-surface" });
        const solved = timeWhen(run, { column: "coreC", value: 74 });
        expect(Math.abs(short.timeMin / solved - 1)).toBeLessThan(short.worstRelativeError);
      }
  });

  test("air that cannot heat the core is refused", () => {
    expect(() => coreTimeClosedForm({ food, thicknessMm: 10, coefficientWm2K: 40, airC: 70 })).toThrow(
      "must be above the core limit of 74 °C, got 70",
    );
  });
});
