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

test("a profile runs through the cells from face to face: mirrored where half is solved, the faces at its ends", () => {
  const half = solveBox(boxProblem({ endS: 200 })).record;
  const row = half.rows - 1;
  const profile = half.profileC.subarray(row * half.nodes, (row + 1) * half.nodes);
  profile.forEach((c, node) => {
    expect(c).toBe(profile[half.nodes - 1 - node]);
    expect(half.profilePlace[node] + half.profilePlace[half.nodes - 1 - node]).toBeCloseTo(1, 12);
    const middle = (half.nodes - 1) / 2;
    if (node < middle) expect(c).toBeGreaterThan(profile[node + 1]);
  });
  expect(profile[0]).toBeCloseTo(half.surfaceC[row], 9);
  expect(profile[(half.nodes - 1) / 2]).toBe(half.coreC[row]);
  const below = { timeS: [0], airC: [20], coefficientWm2K: 500 };
  const whole = solveBox(boxProblem({ below, endS: 200 })).record;
  const last = whole.rows - 1;
  const through = whole.profileC.subarray(last * whole.nodes, (last + 1) * whole.nodes);
  expect(through[0]).toBeCloseTo(whole.surfaceBelowC[last], 9);
  expect(through[whole.nodes - 1]).toBeCloseTo(whole.surfaceC[last], 9);
  expect(through[0]).toBeLessThan(through[whole.nodes - 1]);
});

test("ice by mass is the food's at the start, and shrinks with the wet core", () => {
  const { record } = solveBox(boxProblem({}));
  expect(record.iceFraction[0]).toBeCloseTo((0.735 - 0.087) * (1 - 1 / 18), 9);
  expect(solveBox(boxProblem({ food: foods.withoutIce })).record.iceFraction[0]).toBe(0);
});
