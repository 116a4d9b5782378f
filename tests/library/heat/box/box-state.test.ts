import { expect, test } from "vitest";
import { enthalpyOf, potentialOf } from "../../../../kernel-lib/library/src/heat/box/box-food";
import { boxGrid } from "../../../../kernel-lib/library/src/heat/box/box-grid";
import { boxState, readAir, readState } from "../../../../kernel-lib/library/src/heat/box/box-state";
import { boxProblem } from "./box-problem";

test("readState finds the temperatures that the heat was made from, also in a box that has shrunk", () => {
  const problem = boxProblem({ sidesM: [0.03, 0.02] });
  const state = boxState(problem, boxGrid(problem));
  const { grid, food, ledger } = state;
  const y = new Float64Array(ledger.size);
  y[ledger.crustAbove] = 1e-3;
  y[ledger.crustX] = 2e-3;
  const volume = (grid.lengthX - 2e-3) * grid.lengthY * (grid.lengthZ - 1e-3);
  const temperatureOf = (cell: number): number => -25 + (100 * cell) / grid.total;
  for (let cell = 0; cell < grid.total; cell++)
    y[cell] = (enthalpyOf(food, temperatureOf(cell)) * volume) / grid.perShare[cell];
  readState(state, y);
  expect(state.dimZ).toBeCloseTo(0.004, 12);
  for (let cell = 0; cell < grid.total; cell += 37) {
    expect(state.temperature[cell]).toBeCloseTo(temperatureOf(cell), 9);
    expect(state.potential[cell]).toBeCloseTo(potentialOf(food, temperatureOf(cell)), 9);
  }
});

test("readAir reads each face on its own", () => {
  const problem = boxProblem({ below: { timeS: [0, 100], airC: [20, 120], coefficientWm2K: 5 } });
  const state = boxState(problem, boxGrid(problem));
  state.within = 50;
  readAir(state, 50);
  expect([state.airAboveC, state.airBelowC]).toEqual([204, 70]);
});
