import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutGrid } from "../../../kernel-lib/library/src/pan/cut-grid";

const mm = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe("cutGrid", () => {
  it("cuts rows by columns, longer side in columns", () => {
    const grid = cutGrid({ slabLengthMm: 400, slabWidthMm: 200, cut: { rows: 4, columns: 10 } });
    expect(grid).toMatchObject({ pieces: 40, pieceLengthMm: 50, pieceWidthMm: 40, yieldFraction: 1 });
  });

  it("never makes pieces out of nothing: pieces, kerf and trim fit in the slab", () => {
    fc.assert(
      fc.property(
        mm(100, 700),
        mm(100, 500),
        mm(15, 80),
        mm(15, 80),
        mm(0, 10),
        mm(0, 3),
        (slabLengthMm, slabWidthMm, a, b, trimMm, kerfMm) => {
          const grid = cutGrid({
            slabLengthMm,
            slabWidthMm,
            cut: { pieceLengthMm: a, pieceWidthMm: b },
            trimMm,
            kerfMm,
          });
          expect(grid.yieldFraction).toBeLessThanOrEqual(1 + 1e-12);
          const covered = grid.pieces * grid.pieceLengthMm * grid.pieceWidthMm;
          expect(covered / (slabLengthMm * slabWidthMm)).toBeCloseTo(grid.yieldFraction, 9);
        },
      ),
    );
  });

  it("comes within half a piece of the wanted size along each side", () => {
    fc.assert(
      fc.property(mm(300, 600), mm(200, 400), mm(20, 60), (slabLengthMm, slabWidthMm, sideMm) => {
        const grid = cutGrid({ slabLengthMm, slabWidthMm, cut: { pieceLengthMm: sideMm, pieceWidthMm: sideMm } });
        expect(Math.abs(slabLengthMm / sideMm - grid.columns)).toBeLessThanOrEqual(0.5 + 1e-9);
      }),
    );
  });

  it("lays the piece the other way where that comes nearer", () => {
    const grid = cutGrid({ slabLengthMm: 120, slabWidthMm: 70, cut: { pieceLengthMm: 70, pieceWidthMm: 30 } });
    expect(grid).toMatchObject({ rows: 1, columns: 4, pieceLengthMm: 70, pieceWidthMm: 30 });
  });

  it("says which number is wrong", () => {
    expect(() => cutGrid({ slabLengthMm: 400, slabWidthMm: 200, cut: { rows: 2.5, columns: 4 } })).toThrow(
      "cutGrid: rows must be a whole number >= 1, got 2.5",
    );
    expect(() => cutGrid({ slabLengthMm: 400, slabWidthMm: 20, cut: { rows: 1, columns: 4 }, trimMm: 10 })).toThrow(
      "cutGrid: slab width after trim must be > 0 mm, got 0",
    );
    expect(() => cutGrid({ slabLengthMm: 30, slabWidthMm: 20, cut: { rows: 1, columns: 20 }, kerfMm: 2 })).toThrow(
      "cutGrid: piece size left after kerf",
    );
  });
});
