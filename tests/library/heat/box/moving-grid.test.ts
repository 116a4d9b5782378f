import { expect, test } from "vitest";
import { enthalpyOf } from "../../../../kernel-lib/library/src/heat/box/box-food";
import { boxGrid } from "../../../../kernel-lib/library/src/heat/box/box-grid";
import { boxState, readState } from "../../../../kernel-lib/library/src/heat/box/box-state";
import { moveGrid } from "../../../../kernel-lib/library/src/heat/box/moving-grid";
import { boxProblem } from "./box-problem";

test("what the lines sweep goes from cell to cell and out at the fronts, and food of one temperature keeps it", () => {
  for (const sidesM of [undefined, [0.03, 0.02] as const])
    for (const alike of [true, false]) {
      const below = { timeS: [0], airC: [204], coefficientWm2K: alike ? 40 : 10 };
      const problem = boxProblem({ sidesM, below });
      const state = boxState(problem, boxGrid(problem));
      const { grid, food, ledger } = state;
      for (const front of [state.frontAbove, state.frontBelow, state.frontX, state.frontY]) front.fill(60);
      const volume = grid.lengthX * grid.lengthY * grid.lengthZ;
      const h = enthalpyOf(food, 60);
      const y = new Float64Array(ledger.size);
      for (let cell = 0; cell < grid.total; cell++) y[cell] = (h * volume) / grid.perShare[cell];
      readState(state, y);
      const f = new Float64Array(ledger.size);
      f[ledger.crustAbove] = 3e-6;
      if (!alike) f[ledger.crustBelow] = 1e-6;
      if (sidesM) f[ledger.crustX] = 2e-6;
      if (sidesM) f[ledger.crustY] = 4e-6;
      moveGrid(state, f);
      const left = f.subarray(0, grid.total).reduce((sum, value) => sum + value, 0);
      expect(left * food.densityKgM3).toBeCloseTo(-f[ledger.carried], 9);
      const shrinks =
        (f[ledger.crustAbove] + f[ledger.crustBelow]) / grid.lengthZ +
        f[ledger.crustX] / grid.lengthX +
        f[ledger.crustY] / grid.lengthY;
      expect(f[ledger.carried] / (h * volume * food.densityKgM3 * shrinks)).toBeCloseTo(1, 9);
      // every cell loses heat as it loses volume: it stays at its temperature
      for (let cell = 0; cell < grid.total; cell += 29) expect(f[cell] / (y[cell] * shrinks)).toBeCloseTo(-1, 6);
    }
});
