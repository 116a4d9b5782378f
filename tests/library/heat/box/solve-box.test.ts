import { describe, expect, test } from "vitest";
import { solveBox } from "../../../../kernel-lib/library/src/heat/box/solve-box";
import { foods } from "../foods";
import { boxProblem } from "./box-problem";

describe("solveBox", () => {
  test("counts the heat of the whole box: eight octants, four quarters, two halves", () => {
    const lukewarm = { timeS: [0], airC: [0], coefficientWm2K: 500 };
    const ends = { food: foods.withoutIce, startC: 40, above: lukewarm, below: lukewarm, endS: 5000 };
    const heat = (kg: number): number => -kg * 3400 * 40;
    expect(solveBox(boxProblem(ends)).heatInJ / heat(0.01 * 1050)).toBeCloseTo(1, 3);
    const piece = { ...ends, sidesM: [0.03, 0.02] as const, sides: lukewarm };
    expect(solveBox(boxProblem(piece)).heatInJ / heat(0.01 * 0.03 * 0.02 * 1050)).toBeCloseTo(1, 3);
    const below = { ...lukewarm, coefficientWm2K: 400 };
    expect(solveBox(boxProblem({ ...piece, below })).heatInJ / heat(0.01 * 0.03 * 0.02 * 1050)).toBeCloseTo(1, 3);
  });

  test("says when the core has thawed; undefined when it does not, or never was frozen", () => {
    const outcome = solveBox(boxProblem({}));
    const { record } = outcome;
    const thawedS = outcome.thawedS as number;
    for (let row = 0; row < record.rows; row++)
      if (record.timeS[row] < thawedS) expect(record.coreC[row]).toBeLessThanOrEqual(-1);
      else if (record.timeS[row] > thawedS + 10) expect(record.coreC[row]).toBeGreaterThan(0);
    expect(solveBox(boxProblem({ endS: 60 })).thawedS).toBeUndefined();
    expect(solveBox(boxProblem({ startC: 4 })).thawedS).toBeUndefined();
    const cold = { timeS: [0], airC: [-30], coefficientWm2K: 20 };
    expect(solveBox(boxProblem({ startC: -10, above: cold, below: cold })).thawedS).toBeUndefined();
  });

  test("times the thaw between its steps by the cubic through both ends, and so as well with steps of ten seconds", () => {
    const { record, thawedS } = solveBox(boxProblem({ fixedStepS: 10 }));
    const row = record.timeS.findIndex((t) => t >= (thawedS as number));
    const u = ((thawedS as number) - record.timeS[row - 1]) / 10;
    const { thawLeadK: lead, thawLeadRate: rate } = record;
    // Hermite's four polynomials
    const cubic =
      lead[row - 1] * (1 + 2 * u) * (1 - u) ** 2 +
      10 * rate[row - 1] * u * (1 - u) ** 2 +
      lead[row] * u * u * (3 - 2 * u) +
      10 * rate[row] * u * u * (u - 1);
    expect(cubic).toBeCloseTo(0, 9);
    expect(u).toBeGreaterThan(0);
    expect(u).toBeLessThan(1);
  });

  test("a front that closes in between faces that differ is timed as well as between faces alike", () => {
    const above = { timeS: [0], airC: [204], coefficientWm2K: 40 };
    for (const coefficientWm2K of [0, 10, 39.9]) {
      const below = { ...above, coefficientWm2K };
      const thawed = (cells: number): number =>
        solveBox(boxProblem({ above, below, cells, tolerance: 2e-4, endS: 1200 })).thawedS as number;
      expect(Math.abs(thawed(8) / thawed(48) - 1)).toBeLessThan(5e-3);
    }
  });
});
