import { describe, expect, test } from "vitest";
import {
  type CoreTimeClosedFormOptions,
  coreTimeClosedForm,
} from "../../../../kernel-lib/library/src/heat/formulas/core-time-closed-form";
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

  test("is flagged just past each end of what it was fitted to, and not at the ends", () => {
    const middle = { food, thicknessMm: 12, coefficientWm2K: 40, airC: 190 };
    const flagged = (change: Partial<CoreTimeClosedFormOptions>): boolean =>
      coreTimeClosedForm({ ...middle, ...change }).extrapolation;
    const ends: readonly [keyof CoreTimeClosedFormOptions, number, number][] = [
      ["airC", 170, -1],
      ["airC", 220, 1],
      ["coefficientWm2K", 30, -1],
      ["coefficientWm2K", 60, 1],
      ["thicknessMm", 6, -1],
      ["thicknessMm", 19, 1],
      ["limitC", 69, -1],
      ["limitC", 79, 1],
      ["startC", -15, 1],
      ["startC", 0, -1],
      ["startC", 8, 1],
    ];
    for (const [name, end, outwards] of ends) {
      expect(flagged({ [name]: end }), `${name} ${end}`).toBe(false);
      expect(flagged({ [name]: end + 0.01 * outwards }), `${name} past ${end}`).toBe(true);
    }
    expect(flagged({ startC: -30 })).toBe(false);
  });

  test("from frozen it follows the solver within its stated worst error", () => {
    for (const thicknessMm of [6.35, 19])
      for (const airC of [170, 220]) {
        const slab = { food, thicknessMm, coefficientWm2K: 45, airC };
        const short = coreTimeClosedForm(slab);
        const run = simulateSlab({ ...slab, startC: -18, endMin: 60, stopCoreC: 74, drying: "boiling-surface" });
        const solved = timeWhen(run, { column: "coreC", value: 74 });
        expect(Math.abs(short.timeMin / solved - 1)).toBeLessThan(short.worstRelativeError);
      }
  });

  test("states a smaller error from frozen than from chilled, the usual one below the worst", () => {
    const from = (startC: number) =>
      coreTimeClosedForm({ food, thicknessMm: 12, coefficientWm2K: 40, airC: 190, startC });
    expect(from(-18).relativeError).toBeLessThan(from(4).relativeError);
    expect(from(-1.01).relativeError).toBe(from(-18).relativeError);
    expect(from(-1).relativeError).toBe(from(4).relativeError);
    for (const { relativeError, worstRelativeError } of [from(-18), from(4)])
      expect(worstRelativeError).toBeGreaterThan(2 * relativeError);
  });

  test("air that cannot heat the core is refused", () => {
    expect(() => coreTimeClosedForm({ food, thicknessMm: 10, coefficientWm2K: 40, airC: 70 })).toThrow(
      "must be above the core limit of 74 °C, got 70",
    );
    const slab = { food, thicknessMm: 10, coefficientWm2K: 40 };
    expect(() => coreTimeClosedForm({ ...slab, airC: 74 })).toThrow("must be above the core limit of 74 °C, got 74");
    expect(() => coreTimeClosedForm({ ...slab, airC: 55, limitC: 45 })).toThrow(
      "airC must be at least 56 °C for the short form, got 55",
    );
    expect(coreTimeClosedForm({ ...slab, airC: 56, limitC: 45 }).extrapolation).toBe(true);
    expect(() => coreTimeClosedForm({ ...slab, airC: 190, startC: -41 })).toThrow("startC must be between -40 and 60");
    expect(() => coreTimeClosedForm({ ...slab, airC: 190, startC: 60, limitC: 55 })).toThrow(
      "limitC must be between 60 and 95",
    );
    expect(() => coreTimeClosedForm({ ...slab, airC: 190, thicknessMm: 0 })).toThrow("thicknessMm must be > 0 mm");
  });
});
