import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxGrid, placeNodes, sideCells } from "../../../../kernel-lib/library/src/heat/box/box-grid";
import { boxProblem } from "./box-problem";

describe("sideCells", () => {
  test("fill the half side, finest at the surface, each wider inwards by the same factor", () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 60 }), fc.double({ min: 0.1, max: 100, noNaN: true }), (cells, aspect) => {
        const widths = sideCells(cells, aspect);
        expect(widths.length).toBe(Math.round(cells * Math.max(1, aspect) ** (1 / 6)));
        expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(1, 9);
        const factor = widths[0] / widths[1];
        expect(factor).toBeGreaterThan(1 - 1e-9);
        for (let cell = 1; cell < widths.length; cell++) expect(widths[cell - 1] / widths[cell]).toBeCloseTo(factor, 6);
      }),
    );
  });

  test("are even in a cube, and at the edge of a wide piece at most twice as wide as those of its thickness", () => {
    for (const width of sideCells(8, 1)) expect(width).toBeCloseTo(1 / 8, 9);
    for (const aspect of [4, 10, 40]) {
      const widths = sideCells(8, aspect);
      // in half thicknesses
      expect(widths[widths.length - 1] * aspect).toBeCloseTo(2 / 8, 6);
    }
  });
});

describe("boxGrid", () => {
  test("halves the thickness only between faces alike, and gives a slab one column", () => {
    const slab = boxGrid(boxProblem({}));
    expect([slab.nx, slab.ny, slab.nz, slab.isPiece, slab.halfThickness]).toEqual([1, 1, 8, false, true]);
    expect(slab.lengthZ).toBeCloseTo(0.005, 12);
    const onPan = boxGrid(boxProblem({ below: { timeS: [0], airC: [204], coefficientWm2K: 10 } }));
    expect([onPan.nz, onPan.halfThickness, onPan.lengthZ]).toEqual([16, false, 0.01]);
  });

  test("the shares of its cells fill the box", () => {
    const grid = boxGrid(boxProblem({ sidesM: [0.07, 0.02] }));
    expect(grid.perShare.reduce((sum, perShare) => sum + 1 / perShare, 0)).toBeCloseTo(1, 12);
    expect([grid.nx, grid.ny]).toEqual([11, 9]);
  });
});

test("pairs of cells go by the sum of their widths, the last by twice its own", () => {
  const grid = boxGrid(boxProblem({ sidesM: [0.07, 0.02] }));
  for (const [widths, perPair] of [
    [grid.wx, grid.perPairX],
    [grid.wy, grid.perPairY],
    [grid.wz, grid.perPairZ],
  ])
    widths.forEach((width, cell) => {
      expect(perPair[cell] * (width + (widths[cell + 1] ?? width))).toBeCloseTo(1, 12);
    });
});

test("placeNodes runs from face to face", () => {
  const full = new Float64Array(6);
  placeNodes(full, new Float64Array(4).fill(0.25), false);
  expect(Array.from(full)).toEqual([0, 0.125, 0.375, 0.625, 0.875, 1]);
  const half = new Float64Array(7);
  placeNodes(half, new Float64Array(2).fill(0.5), true);
  expect(Array.from(half)).toEqual([0, 0.125, 0.375, 0.5, 0.625, 0.875, 1]);
});
