import { expect, test } from "vitest";
import { solveBox } from "../../../../kernel-lib/library/src/heat/box/solve-box";
import { foods } from "../foods";
import { boxProblem } from "./box-problem";

test("each row's slopes are those of its columns", () => {
  const below = { timeS: [0], airC: [180], coefficientWm2K: 12 };
  const { record } = solveBox(boxProblem({ below, endS: 500, fixedStepS: 1 }));
  const row = 400;
  for (const [column, rate] of [
    ["coreC", "coreRate"],
    ["midPlaneC", "midPlaneRate"],
    ["surfaceC", "surfaceRate"],
    ["surfaceBelowC", "surfaceBelowRate"],
    ["meanC", "meanRate"],
    ["thawLeadK", "thawLeadRate"],
  ] as const)
    expect((record[column][row + 1] - record[column][row - 1]) / 2 / record[rate][row]).toBeCloseTo(1, 2);
});

test("ice by mass is the food's at the start, and shrinks with the wet core", () => {
  const { record } = solveBox(boxProblem({}));
  expect(record.iceFraction[0]).toBeCloseTo((0.735 - 0.087) * (1 - 1 / 18), 9);
  expect(solveBox(boxProblem({ food: foods.withoutIce })).record.iceFraction[0]).toBe(0);
});
