import { expect, test } from "vitest";
import { runsOverDoubt } from "../../../../kernel-lib/library/src/heat/freezing/runs-over-doubt";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

test("more heat transfer makes the earliest time, less the latest", () => {
  const { runs, range } = runsOverDoubt(0.3, (factor) =>
    simulateSlab({
      food: foods.reference,
      thicknessMm: 10,
      startC: -18,
      airC: 204,
      coefficientWm2K: 40 * factor,
      endMin: 3,
    }),
  );
  expect(runs.map((run) => run.kind)).toEqual(["heat run", "heat run", "heat run"]);
  const heat = range((run) => run.heatInKJ);
  expect(heat.earliestMin).toBeGreaterThan(heat.timeMin);
  expect(heat.latestMin).toBeLessThan(heat.timeMin);
  expect(heat.timeMin).toBe(runs[0].heatInKJ);
});
