import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { timeWhen, valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { checkNumerics, simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;
const frozen = { food, thicknessMm: 10, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 12 };

describe("simulateSlab", () => {
  test("an insulated underside is half of a slab of twice the thickness", () => {
    const freezing = { ...frozen, startC: 5, airC: -18, coefficientWm2K: 10, endMin: 600, stopCoreC: -10 };
    const half = simulateSlab({ ...freezing, coefficientBelowWm2K: 0, cells: 10 });
    const whole = simulateSlab({ ...freezing, thicknessMm: 20, cells: 20 });
    const time = (run: typeof half): number => timeWhen(run, { column: "coreC", value: -10 });
    expect(Math.abs(time(half) / time(whole) - 1)).toBeLessThan(1e-3);
  });

  test("a full slab with the same air on both faces is the symmetric one", () => {
    const symmetric = simulateSlab(frozen);
    const full = simulateSlab({ ...frozen, airBelowC: 204.000001 });
    expect(valueAt(full, "coreC", 6)).toBeCloseTo(valueAt(symmetric, "coreC", 6), 1);
    expect(valueAt(full, "crustMm", 12)).toBeCloseTo(valueAt(symmetric, "crustMm", 12), 3);
    expect(valueAt(full, "crustBelowMm", 12)).toBeCloseTo(valueAt(full, "crustMm", 12), 3);
  });

  test("a great coefficient pins the surface to the air", () => {
    const run = simulateSlab({ ...frozen, airC: 60, coefficientWm2K: 1e5 });
    expect(run.surfaceC[run.surfaceC.length - 1]).toBeCloseTo(60, 1);
  });

  test("turning over half-way evens out a slab with a weak underside", () => {
    const oneSided = { ...frozen, coefficientBelowWm2K: 10, endMin: 36 };
    const left = simulateSlab(oneSided);
    const turned = simulateSlab({ ...oneSided, flipMin: 18 });
    const gap = (run: typeof left): number => Math.abs(valueAt(run, "crustMm", 36) - valueAt(run, "crustBelowMm", 36));
    expect(gap(turned)).toBeLessThan(0.7 * gap(left));
    expect(valueAt(turned, "coreC", 17)).toBeCloseTo(valueAt(left, "coreC", 17), 1);
  });

  test("an open door costs time", () => {
    const steady = simulateSlab({ ...frozen, stopCoreC: 74 });
    const opened = simulateSlab({
      ...frozen,
      stopCoreC: 74,
      airC: [
        { timeMin: 0, airC: 204 },
        { timeMin: 4, airC: 204 },
        { timeMin: 4, airC: 120 },
        { timeMin: 6, airC: 204 },
      ],
    });
    const later = timeWhen(opened, { column: "coreC", value: 74 }) - timeWhen(steady, { column: "coreC", value: 74 });
    expect(later).toBeGreaterThan(0.2);
    expect(later).toBeLessThan(2);
  });

  test("drying below 100 °C starts the crust at once and holds the core back", () => {
    const boiling = simulateSlab(frozen);
    const wet = simulateSlab({ ...frozen, drying: "wet-front" });
    expect(valueAt(wet, "crustMm", 4)).toBeGreaterThan(0.05);
    expect(valueAt(boiling, "crustMm", 4)).toBe(0);
    expect(valueAt(wet, "coreC", 8)).toBeLessThan(valueAt(boiling, "coreC", 8));
    expect(valueAt(wet, "waterLostPercent", 12)).toBeGreaterThan(valueAt(boiling, "waterLostPercent", 12));
  });

  test("water lost is the crust's water, and a run ends when all water is gone", () => {
    const run = simulateSlab({ ...frozen, thicknessMm: 2, coefficientWm2K: 100, endMin: 60 });
    expect(run.stopped).toBe("all water gone");
    expect(run.notes[0]).toMatch(/^All water was gone after \d+\.\d min; the run ends there\.$/);
    const last = run.timeMin.length - 1;
    expect(run.timeMin[last]).toBeLessThan(10);
    expect(run.waterLostPercent[last]).toBeCloseTo((73.5 * (run.crustMm[last] + run.crustBelowMm[last])) / 2, 6);
    expect(run.waterLostPercent[last]).toBeLessThan(73.5);
  });

  test("whatever the food meets, energy closes to 1e-6, water stays within the food, nothing leaves the range of the air", () => {
    fc.assert(
      fc.property(
        fc.record({
          thicknessMm: fc.double({ min: 2, max: 30, noNaN: true }),
          startC: fc.double({ min: -30, max: 30, noNaN: true }),
          airC: fc.double({ min: -40, max: 250, noNaN: true }),
          coefficientWm2K: fc.double({ min: 2, max: 150, noNaN: true }),
          coefficientBelowWm2K: fc.double({ min: 0, max: 150, noNaN: true }),
          drying: fc.constantFrom("none", "boiling-surface", "receding-front", "wet-front"),
        }),
        ({ drying, ...slab }) => {
          const run = simulateSlab({ food, ...slab, drying: drying as "none", endMin: 20, cells: 8 });
          expect(run.energyBalanceError).toBeLessThan(1e-6);
          for (const lost of run.waterLostPercent) {
            expect(lost).toBeGreaterThan(-1e-6);
            expect(lost).toBeLessThanOrEqual(73.5 + 1e-9);
          }
          const low = Math.min(slab.startC, slab.airC) - 0.5;
          const high = Math.max(slab.startC, slab.airC) + 0.5;
          for (const core of run.coreC) {
            expect(core).toBeGreaterThan(low);
            expect(core).toBeLessThan(high);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  test("bad input is named", () => {
    expect(() => simulateSlab({ ...frozen, thicknessMm: -1 })).toThrow(
      "simulateSlab: thicknessMm must be > 0 mm, got -1",
    );
    expect(() => simulateSlab({ ...frozen, food: { ...food, thawedSpecificHeatKJkgK: -3 } })).toThrow(
      "simulateSlab: food: thawedSpecificHeatKJkgK must be between 0.5 and 5",
    );
    expect(() => simulateSlab({ ...frozen, coefficientWm2K: -4 })).toThrow("coefficient must be >= 0");
    expect(() => simulateSlab({ ...frozen, drying: { crustWaterKgM3: 2000 } })).toThrow(
      "at most the food's own 772 kg/m³",
    );
    expect(() => simulateSlab({ ...frozen, cells: 2.5 })).toThrow(
      "cells must be a whole number from 4 to 400, got 2.5",
    );
    expect(() => simulateSlab({ ...frozen, airC: [] })).toThrow("must hold at least one point");
    expect(() => simulateSlab({ ...frozen, startC: 121 })).toThrow("startC must be between -60 and 120 °C, got 121");
    expect(() => simulateSlab({ ...frozen, thicknessMm: 501 })).toThrow("thicknessMm must be between 0.1 and 500 mm");
    expect(() => simulateSlab({ ...frozen, endMin: 0 })).toThrow("endMin must be > 0 min, got 0");
  });

  test("the method's own choices are checked, their ends being inside", () => {
    const check = (cells: number, tolerance: number, step?: number) => () =>
      checkNumerics(cells, tolerance, step, "test");
    for (const cells of [4, 400]) expect(check(cells, 1e-3)).not.toThrow();
    for (const cells of [3, 401, 4.5]) expect(check(cells, 1e-3)).toThrow("must be a whole number from 4 to 400");
    for (const tolerance of [1e-8, 0.1]) expect(check(8, tolerance, 1)).not.toThrow();
    for (const tolerance of [0, 0.11]) expect(check(8, tolerance)).toThrow("test: tolerance must be between");
    expect(check(8, 1e-3, 0)).toThrow("test: fixedStepMin must be > 0 min, got 0");
  });

  test("a finer tolerance and steps of one size lead to the same core, the latter as many as told", () => {
    const plain = valueAt(simulateSlab(frozen), "coreC", 9);
    expect(valueAt(simulateSlab({ ...frozen, tolerance: 1e-5 }), "coreC", 9)).toBeCloseTo(plain, 0);
    const even = simulateSlab({ ...frozen, fixedStepMin: 0.05 });
    expect(even.steps).toBe(240);
    expect(valueAt(even, "coreC", 9)).toBeCloseTo(plain, 0);
  });

  test("each face has its own air and coefficient, below as above unless it is told", () => {
    const oneSided = simulateSlab({ ...frozen, drying: "none", airBelowC: 20, coefficientBelowWm2K: 200 });
    expect(valueAt(oneSided, "surfaceBelowC", 12)).toBeLessThan(40);
    expect(valueAt(oneSided, "surfaceC", 12)).toBeGreaterThan(60);
    const air = simulateSlab({ ...frozen, drying: "none", airBelowC: 20 });
    const both = simulateSlab({ ...frozen, drying: "none", airBelowC: 20, coefficientBelowWm2K: 40 });
    expect(air.coreC).toEqual(both.coreC);
  });
});
