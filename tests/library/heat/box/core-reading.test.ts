import { describe, expect, test } from "vitest";
import { enthalpyOf } from "../../../../kernel-lib/library/src/heat/box/box-food";
import { boxGrid } from "../../../../kernel-lib/library/src/heat/box/box-grid";
import type { BoxProblem } from "../../../../kernel-lib/library/src/heat/box/box-problem";
import { boxState, readState } from "../../../../kernel-lib/library/src/heat/box/box-state";
import {
  bendToMiddle,
  bendToTurn,
  type CoreReading,
  coreReader,
  slowestCell,
  wedgeToMiddle,
  wedgeToTurn,
} from "../../../../kernel-lib/library/src/heat/box/core-reading";
import { boxProblem } from "./box-problem";

const even = Float64Array.of(1, 1, 1, 1);
const graded = Float64Array.of(2, 1.2, 0.8);

describe("to the plane of symmetry", () => {
  test("the bend is exact for a parabola that is flat there, the wedge for a straight line", () => {
    for (const widths of [even, graded]) {
      const [x0, x1] = [widths[0] / 2, widths[0] + widths[1] / 2];
      const parabola = (x: number): number => 3 + 2 * x * x;
      expect(parabola(x0) - bendToMiddle(parabola(x0), parabola(x1), widths)).toBeCloseTo(3, 12);
      const line = (x: number): number => 3 + 2 * x;
      expect(line(x0) - wedgeToMiddle(line(x0), line(x1), widths)).toBeCloseTo(3, 12);
    }
  });
});

describe("to the turn of three even cells", () => {
  test("the bend is exact for a parabola, wherever it turns", () => {
    for (const turn of [-0.5, -0.2, 0, 0.31, 0.5]) {
      const at = (x: number): number => 5 + 3 * (x - turn) ** 2;
      expect(at(0) - bendToTurn(at(0), at(-1), at(1))).toBeCloseTo(5, 9);
    }
    expect(bendToTurn(1, 1, 1)).toBe(0);
  });

  test("the wedge is exact for the means of a wedge, wherever its tip is", () => {
    for (const tip of [-0.5, -0.2, 0, 0.31, 0.5]) {
      // mean of 5 + 3|x − tip| over a cell
      const mean = (from: number): number => {
        const part = (x: number): number => (3 * (x - tip) * Math.abs(x - tip)) / 2;
        return 5 + part(from + 1) - part(from);
      };
      expect(mean(-0.5) - wedgeToTurn(mean(-0.5), mean(-1.5), mean(0.5))).toBeCloseTo(5, 9);
    }
    expect(wedgeToTurn(1, 1, 1)).toBe(0);
  });
});

test("the slowest cell is the coldest or warmest; of cells alike next to each other the middle one", () => {
  expect(slowestCell(Float64Array.of(5, 2, 3, 9), 1)).toBe(1);
  expect(slowestCell(Float64Array.of(5, 2, 3, 9), -1)).toBe(3);
  expect(slowestCell(Float64Array.of(60, 0, 0, 0, 60), 1)).toBe(2);
  expect(slowestCell(Float64Array.of(0, 5, 0), 1)).toBe(0);
});

/** Reads a slab whose cells have these temperatures from the bottom up. */
function read(cellsC: readonly number[], change: Partial<BoxProblem> = {}, heating = true): CoreReading {
  const problem = boxProblem({ cells: cellsC.length, ...change });
  const state = boxState(problem, boxGrid(problem));
  const { grid, food, ledger } = state;
  const y = new Float64Array(ledger.size);
  cellsC.forEach((c, cell) => {
    y[cell] = (enthalpyOf(food, c) * grid.lengthZ) / grid.perShare[cell];
  });
  readState(state, y);
  const { reading, read: readNow } = coreReader(state, heating);
  state.frontAbove.fill(heating ? 150 : -30);
  state.frontBelow.fill(heating ? 150 : -30);
  readNow();
  return reading;
}

describe("coreReader", () => {
  test("a smooth core is read off its parabola, a neighbour beyond the front does not pull it down", () => {
    expect(read([20.25, 22.25, 26.25, 32.25]).coreC).toBeCloseTo(20, 9);
    expect(read([-5, 3, 12, 20]).coreC).toBeCloseTo(-5 - 4 / 8, 9);
  });

  test("while the front closes in the core stays at its freezing point, then catches up", () => {
    const waiting = read([2, 10, 18, 26]);
    expect(waiting.thawLeadK).toBeCloseTo(2 - 4 - -1, 9);
    expect(waiting.coreC).toBe(-1);
    const thawed = read([20, 22, 28, 38]);
    expect(thawed.thawLeadK).toBeGreaterThan(0);
    expect(thawed.coreC).toBeCloseTo(20 - 2 / 8, 9);
    // cooling knows no such wait
    expect(read([2, -2, -6, -12], {}, false).coreC).toBeCloseTo(2 + 3 / 8, 9);
  });

  test("between faces that differ the core is where it is slowest, the mid-plane where the middle was", () => {
    const onPan = { cells: 4, below: { timeS: [0], airC: [204], coefficientWm2K: 10 } };
    const cells = [30, 24, 20, 18, 19, 23, 30, 40];
    const both = read(cells, onPan);
    expect(both.coreC).toBeLessThan(18);
    expect(both.coreC).toBeGreaterThan(17.5);
    // half-way between the fourth and the fifth
    expect(both.midPlaneC).toBeCloseTo((9 * (18 + 19) - (20 + 23)) / 16, 9);
    const insulated = { cells: 4, below: { timeS: [0], airC: [204], coefficientWm2K: 0 } };
    expect(read([10, 12, 16, 22, 30, 40, 52, 66], insulated).coreC).toBeCloseTo(10 - 2 / 8, 9);
  });
});
