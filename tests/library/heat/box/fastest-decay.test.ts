import { expect, test } from "vitest";
import { boxGrid } from "../../../../kernel-lib/library/src/heat/box/box-grid";
import { boxState, readAir, readState } from "../../../../kernel-lib/library/src/heat/box/box-state";
import { conduct } from "../../../../kernel-lib/library/src/heat/box/conduct";
import { crossFaces } from "../../../../kernel-lib/library/src/heat/box/cross-faces";
import { fastestDecay } from "../../../../kernel-lib/library/src/heat/box/fastest-decay";
import { foods } from "../foods";
import { boxProblem } from "./box-problem";

test("the bound lies above the fastest decay of the box, by less than half", () => {
  for (const sidesM of [undefined, [0.01, 0.01] as const, [0.1, 0.02] as const])
    for (const coefficientWm2K of [5, 5000]) {
      const air = { timeS: [0], airC: [0], coefficientWm2K };
      const problem = boxProblem({
        food: foods.withoutIce,
        startC: 0,
        sidesM,
        above: air,
        below: air,
        sides: sidesM && air,
      });
      const state = boxState(problem, boxGrid(problem));
      const { grid, ledger } = state;
      // temperatures about 0 in a food that starts at its freezing point of −1 °C: rates are linear in the heat above that
      const zero = new Float64Array(ledger.size);
      const rates = (y: Float64Array): Float64Array => {
        const f = new Float64Array(ledger.size);
        readState(state, y);
        readAir(state, 0);
        conduct(state, f);
        crossFaces(state, y, f);
        return f.fill(0, grid.total);
      };
      const still = rates(zero);
      let y = Float64Array.from({ length: ledger.size }, (_, cell) => (cell < grid.total ? Math.sin(7 * cell) : 0));
      let fastest = 0;
      for (let power = 0; power < 400; power++) {
        const size = Math.sqrt(y.reduce((sum, value) => sum + value * value, 0));
        y = y.map((value) => value / size);
        const next = rates(y).map((value, at) => value - still[at]);
        fastest = Math.sqrt(next.reduce((sum, value) => sum + value * value, 0));
        y = next;
      }
      readState(state, zero);
      const bound = fastestDecay(state)();
      expect(bound).toBeGreaterThan(fastest);
      expect(bound).toBeLessThan(1.5 * fastest);
    }
});
