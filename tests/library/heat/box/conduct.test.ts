import { describe, expect, test } from "vitest";
import { enthalpyOf, potentialOf } from "../../../../kernel-lib/library/src/heat/box/box-food";
import { boxGrid } from "../../../../kernel-lib/library/src/heat/box/box-grid";
import { type BoxState, boxState, readState } from "../../../../kernel-lib/library/src/heat/box/box-state";
import { conduct } from "../../../../kernel-lib/library/src/heat/box/conduct";
import { boxProblem } from "./box-problem";

/** A box whose cells have these temperatures, and the heat that flows between them. */
function flowing(sidesM: readonly [number, number] | undefined, temperatureOf: (cell: number) => number) {
  const problem = boxProblem({ sidesM });
  const state: BoxState = boxState(problem, boxGrid(problem));
  const { grid, food, ledger } = state;
  const volume = grid.lengthX * grid.lengthY * grid.lengthZ;
  const y = new Float64Array(ledger.size);
  for (let cell = 0; cell < grid.total; cell++)
    y[cell] = (enthalpyOf(food, temperatureOf(cell)) * volume) / grid.perShare[cell];
  const f = new Float64Array(ledger.size);
  readState(state, y);
  conduct(state, f);
  return { state, f };
}

describe("conduct", () => {
  test("passes heat on and keeps none of it", () => {
    const { f } = flowing([0.03, 0.02], (cell) => 40 * Math.sin(cell));
    expect(Math.abs(f.reduce((sum, value) => sum + value, 0))).toBeLessThan(1e-12 * Math.max(...f.map(Math.abs)));
    expect(Math.max(...f)).toBeGreaterThan(0);
  });

  test("leaves a box of one temperature alone", () => {
    const { f } = flowing([0.03, 0.02], () => -7);
    expect(Math.max(...f.map(Math.abs))).toBeLessThan(1e-12);
  });

  test("across a freezing front, the whole of the curve conducts: the difference of potentials over the distance", () => {
    const { state, f } = flowing(undefined, (cell) => (cell === 0 ? -20 : 10));
    const { food, grid } = state;
    const distanceM = grid.lengthZ / grid.nz;
    const wanted = (potentialOf(food, 10) - potentialOf(food, -20)) / distanceM / food.densityKgM3;
    expect(f[0] / wanted).toBeCloseTo(1, 9);
    expect(f[1] / wanted).toBeCloseTo(-1, 9);
    // between what either side alone conducts
    expect((wanted * food.densityKgM3 * distanceM) / 30).toBeGreaterThan(food.thawedWmK);
    expect((wanted * food.densityKgM3 * distanceM) / 30).toBeLessThan(food.frozenWmK);
  });
});
