import { describe, expect, test } from "vitest";
import { enthalpyOf, potentialOf } from "../../../../kernel-lib/library/src/heat/box/box-food";
import { boxGrid } from "../../../../kernel-lib/library/src/heat/box/box-grid";
import type { BoxProblem } from "../../../../kernel-lib/library/src/heat/box/box-problem";
import { boxState, readAir, readState } from "../../../../kernel-lib/library/src/heat/box/box-state";
import { crossFaces, readSurfaces } from "../../../../kernel-lib/library/src/heat/box/cross-faces";
import { boxProblem } from "./box-problem";

/** A box at one temperature, and what crosses its faces. */
function crossed(change: Partial<BoxProblem>, temperatureC: number | ((cell: number) => number)) {
  const problem = boxProblem(change);
  const state = boxState(problem, boxGrid(problem));
  const { grid, food, ledger } = state;
  const y = new Float64Array(ledger.size);
  const volume = grid.lengthX * grid.lengthY * grid.lengthZ;
  for (let cell = 0; cell < grid.total; cell++)
    y[cell] =
      (enthalpyOf(food, typeof temperatureC === "number" ? temperatureC : temperatureC(cell)) * volume) /
      grid.perShare[cell];
  const f = new Float64Array(ledger.size);
  readState(state, y);
  readAir(state, 0);
  crossFaces(state, y, f);
  readSurfaces(state, y);
  return { state, f };
}

describe("crossFaces", () => {
  test("each face takes heat by its area, through film and half a cell", () => {
    const { state, f } = crossed({ sidesM: [0.03, 0.02] }, 20);
    const { ledger, grid, food } = state;
    const share = (length: number, width: number): number => 184 / (1 / 40 + (0.5 * width * length) / food.thawedWmK);
    const wanted =
      grid.lengthX * grid.lengthY * share(grid.lengthZ, grid.wz[grid.nz - 1]) +
      grid.lengthY * grid.lengthZ * share(grid.lengthX, grid.wx[grid.nx - 1]) +
      grid.lengthX * grid.lengthZ * share(grid.lengthY, grid.wy[grid.ny - 1]);
    expect(f[ledger.heatIn] / wanted).toBeCloseTo(1, 9);
    const taken = f.subarray(0, grid.total).reduce((sum, value) => sum + value, 0) * food.densityKgM3;
    expect(taken / wanted).toBeCloseTo(1, 9);
    expect(f[ledger.lost]).toBe(0);
  });

  test("an insulated face takes none, and its surface is where the column ends", () => {
    const { state, f } = crossed({ below: { timeS: [0], airC: [204], coefficientWm2K: 0 } }, 20);
    expect(f[0]).toBe(0);
    expect(f[state.grid.nz - 1]).toBeGreaterThan(0);
    expect(state.surfaceBelowC).toBeCloseTo(20, 9);
    expect(state.surfaceAboveC).toBeGreaterThan(20);
    // a parabola that is flat at the insulated face: 5 + 2·(cells from it)²
    const insulated = { timeS: [0], airC: [204], coefficientWm2K: 0 };
    const bent = crossed({ below: insulated }, (cell) => 5 + 2 * (cell + 0.5) ** 2).state;
    expect(bent.surfaceBelowC).toBeCloseTo(5, 9);
    const turned = crossed(
      { above: insulated, below: { ...insulated, coefficientWm2K: 9 } },
      (cell) => 5 + 2 * (15.5 - cell) ** 2,
    );
    expect(turned.state.surfaceAboveC).toBeCloseTo(5, 9);
  });

  test("a face that freezes conducts as its frozen food does: film and potentials carry the same heat", () => {
    const cold = { timeS: [0], airC: [-30], coefficientWm2K: 600 };
    const { state, f } = crossed({ above: cold, below: cold, startC: 2 }, 2);
    const { ledger, grid, food, frontAbove } = state;
    const gap = (0.5 * grid.lengthZ) / grid.nz;
    const inner = (potentialOf(food, 2) - potentialOf(food, frontAbove[0])) / gap;
    expect(f[ledger.heatIn]).toBeLessThan(0);
    // the last of Newton's steps moves the front by less than 0.1 K
    expect(Math.abs(inner / -f[ledger.heatIn] - 1)).toBeLessThan(0.01);
    const asThawed = 32 / (1 / 600 + gap / food.thawedWmK);
    expect(-f[ledger.heatIn]).toBeGreaterThan(1.1 * asThawed);
  });

  test("a receding front grows by the water that leaves it", () => {
    const drying = { ...boxProblem({}).drying, law: "receding-front" as const };
    const { state, f } = crossed({ drying }, 98);
    const { ledger } = state;
    expect(f[ledger.lost]).toBeGreaterThan(0);
    expect((f[ledger.crustAbove] * 771.75) / f[ledger.lost]).toBeCloseTo(1, 9);
    expect(state.frontAbove[0]).toBe(100);
    expect(state.surfaceAboveC).toBeCloseTo(100, 9);
  });
});
