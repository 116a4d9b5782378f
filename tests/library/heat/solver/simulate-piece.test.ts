import { describe, expect, test } from "vitest";
import { brickSeriesSolution } from "../../../../kernel-lib/library/src/heat/formulas/series-solution";
import { timeWhen, valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulatePiece } from "../../../../kernel-lib/library/src/heat/solver/simulate-piece";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const { reference: food, withoutIce } = foods;
const fryer = { food, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 40, stopCoreC: 74 };
const core = { column: "coreC", value: 74 } as const;

describe("simulatePiece", () => {
  for (const [lengthMm, widthMm, thicknessMm] of [
    [40, 40, 12.7],
    [70, 27, 14],
    [20, 20, 20],
  ])
    test(`constant properties, ${lengthMm} × ${widthMm} × ${thicknessMm} mm: within 0.1 % of the product series`, () => {
      const box = { lengthMm, widthMm, thicknessMm, coefficientWm2K: 25 };
      const plain = { conductivityWmK: 0.45, densityKgM3: 1050, specificHeatKJkgK: 3.4, timeMin: 5 };
      const exact = brickSeriesSolution({ ...box, ...plain });
      const run = simulatePiece({
        food: withoutIce,
        ...box,
        startC: 5,
        airC: 180,
        endMin: 5,
        cells: 10,
        tolerance: 1e-4,
      });
      const last = run.timeMin.length - 1;
      expect(Math.abs((180 - run.coreC[last]) / 175 / exact.centre - 1)).toBeLessThan(1e-3);
      expect(Math.abs((180 - run.meanC[last]) / 175 / exact.mean - 1)).toBeLessThan(1e-3);
    });

  test("the error falls with the square of the cell width", () => {
    const box = { lengthMm: 20, widthMm: 20, thicknessMm: 20, coefficientWm2K: 25 };
    const plain = { conductivityWmK: 0.45, densityKgM3: 1050, specificHeatKJkgK: 3.4, timeMin: 5 };
    const exact = brickSeriesSolution({ ...box, ...plain }).mean;
    const error = [4, 8, 16].map((cells) => {
      const run = simulatePiece({
        food: withoutIce,
        ...box,
        startC: 5,
        airC: 180,
        endMin: 5,
        cells,
        fixedStepMin: 5 / 400,
      });
      return Math.abs((180 - run.meanC[run.meanC.length - 1]) / 175 - exact);
    });
    for (const ratio of [error[0] / error[1], error[1] / error[2]]) {
      expect(ratio).toBeGreaterThan(3.6);
      expect(ratio).toBeLessThan(4.4);
    }
  });

  test("a very wide piece is the slab, with and without drying", () => {
    for (const drying of ["none", "receding-front"] as const) {
      const slab = simulateSlab({ ...fryer, thicknessMm: 12.7, cells: 8, drying });
      const piece = simulatePiece({ ...fryer, thicknessMm: 12.7, widthMm: 1000, lengthMm: 1000, drying });
      expect(Math.abs(timeWhen(piece, core) / timeWhen(slab, core) - 1)).toBeLessThan(1e-3);
    }
  });

  test("edges count: a 14 × 27 × 70 mm stick needs about a fifth to a quarter less than its slab, a 20 mm square stick little more than half", () => {
    const slab = (thicknessMm: number): number =>
      timeWhen(simulateSlab({ ...fryer, thicknessMm, drying: "none" }), core);
    const stick = simulatePiece({ ...fryer, thicknessMm: 14, widthMm: 27, lengthMm: 70, drying: "none" });
    const square = simulatePiece({ ...fryer, thicknessMm: 20, widthMm: 20, lengthMm: 300, drying: "none" });
    expect(timeWhen(stick, core) / slab(14)).toBeGreaterThan(0.73);
    expect(timeWhen(stick, core) / slab(14)).toBeLessThan(0.82);
    expect(timeWhen(square, core) / slab(20)).toBeGreaterThan(0.53);
    expect(timeWhen(square, core) / slab(20)).toBeLessThan(0.6);
  });

  test("default grid within 0.5 % of a fine one", () => {
    const stick = { ...fryer, thicknessMm: 14, widthMm: 27, lengthMm: 70, drying: "none" } as const;
    const fine = timeWhen(simulatePiece({ ...stick, cells: 14, tolerance: 5e-4 }), core);
    expect(Math.abs(timeWhen(simulatePiece(stick), core) / fine - 1)).toBeLessThan(5e-3);
  });

  test("energy closes and water lost is the crust's, whatever the faces do", () => {
    const run = simulatePiece({
      ...fryer,
      stopCoreC: undefined,
      endMin: 12,
      thicknessMm: 10,
      widthMm: 25,
      lengthMm: 40,
      coefficientBelowWm2K: 15,
      coefficientSidesWm2K: 25,
      flipMin: 6,
      cells: 6,
    });
    expect(run.energyBalanceError).toBeLessThan(1e-6);
    const last = run.timeMin.length - 1;
    expect(run.waterLostPercent[last]).toBeGreaterThan(1);
    expect(run.waterLostPercent[last]).toBeLessThan(73.5);
    expect(run.crustMm[last]).toBeGreaterThan(0);
    expect(valueAt(run, "crustBelowMm", 12)).toBeGreaterThan(0);
  });

  test("a small piece dries through and says so", () => {
    const run = simulatePiece({
      food,
      thicknessMm: 5,
      widthMm: 8,
      lengthMm: 8,
      startC: -18,
      airC: 250,
      coefficientWm2K: 100,
      endMin: 60,
      cells: 5,
    });
    expect(run.stopped).toBe("all water gone");
    expect(run.waterLostPercent[run.timeMin.length - 1]).toBeLessThan(73.6);
  });

  test("its sides have a coefficient of their own, as above unless told, and insulated sides leave it a slab", () => {
    const bite = { ...fryer, thicknessMm: 12, widthMm: 24, lengthMm: 30, drying: "none", cells: 6 } as const;
    const alike = simulatePiece({ ...bite, coefficientSidesWm2K: 40 });
    expect(simulatePiece(bite).coreC).toEqual(alike.coreC);
    const insulated = timeWhen(simulatePiece({ ...bite, coefficientSidesWm2K: 0 }), core);
    const slab = timeWhen(simulateSlab({ ...fryer, thicknessMm: 12, drying: "none", cells: 6 }), core);
    expect(Math.abs(insulated / slab - 1)).toBeLessThan(2e-3);
    expect(timeWhen(alike, core)).toBeLessThan(0.9 * insulated);
    // width and length are alike to the heat
    const turned = simulatePiece({ ...bite, widthMm: 30, lengthMm: 24 });
    expect(timeWhen(turned, core) / timeWhen(alike, core)).toBeCloseTo(1, 6);
  });

  test("bad input is named", () => {
    expect(() => simulatePiece({ ...fryer, thicknessMm: 10, widthMm: 0, lengthMm: 30 })).toThrow(
      "simulatePiece: widthMm must be between 1 and 1000 mm, got 0",
    );
    const bite = { ...fryer, thicknessMm: 10, widthMm: 20, lengthMm: 30 };
    expect(() => simulatePiece({ ...bite, lengthMm: 1001 })).toThrow(
      "lengthMm must be between 1 and 1000 mm, got 1001",
    );
    expect(() => simulatePiece({ ...bite, startC: -61 })).toThrow("startC must be between -60 and 120 °C, got -61");
    expect(() => simulatePiece({ ...bite, endMin: 0 })).toThrow("endMin must be > 0 min, got 0");
    expect(() => simulatePiece({ ...bite, coefficientSidesWm2K: -1 })).toThrow("coefficientSides must be >= 0");
  });
});
