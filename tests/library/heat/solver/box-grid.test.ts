import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  gradedCells,
  placeNodes,
  slowestPoint,
  toCentre,
} from "../../../../kernel-lib/library/src/heat/solver/box-grid";

describe("gradedCells", () => {
  test("fills the half, finest at the surface and there of the share that was asked", () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 60 }), fc.double({ min: 0.02, max: 1, noNaN: true }), (count, share) => {
        const widths = gradedCells(count, share);
        expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(1, 9);
        for (let cell = 1; cell < count; cell++) expect(widths[cell]).toBeLessThanOrEqual(widths[cell - 1] + 1e-12);
      }),
    );
    const fine = gradedCells(400, 0.2);
    expect(fine[399] * 400).toBeCloseTo(0.2, 2);
  });
});

describe("toCentre", () => {
  const widths = Float64Array.of(1, 1, 1, 1);
  test("is exact for a parabola that is flat at the centre", () => {
    const at = (x: number): number => 3 + 2 * x * x;
    expect(toCentre(at(0.5), at(1.5), at(2.5), widths)).toBeCloseTo(3, 12);
  });
  test("is not thrown off by a kink", () => {
    expect(toCentre(-5, 2, 9.5, widths)).toBeGreaterThan(-5.2);
    expect(toCentre(-5, 2, 8, widths)).toBe(-5);
  });
});

describe("slowestPoint", () => {
  const parabola = (turn: number) => Float64Array.from({ length: 8 }, (_, k) => (k + 0.5 - turn) ** 2);
  test("finds the turn of a parabola between cells, coldest or warmest", () => {
    for (const turn of [3.1, 4, 4.45]) {
      const column = parabola(turn);
      expect(slowestPoint(column, turn ** 2, (8 - turn) ** 2, true)).toBeCloseTo(0, 9);
      expect(
        slowestPoint(
          column.map((value) => -value),
          -(turn ** 2),
          -((8 - turn) ** 2),
          false,
        ),
      ).toBeCloseTo(0, 9);
    }
  });
  test("leaves a flat column flat beside a steep face", () => {
    const column = Float64Array.of(0, 0, 0, 0, 0, 0, 0, 60);
    expect(slowestPoint(column, 0, 150, true)).toBe(0);
  });
  test("a face may be the slowest", () => {
    expect(slowestPoint(Float64Array.of(1, 2, 3, 4), 0.5, 5, true)).toBe(0.5);
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
