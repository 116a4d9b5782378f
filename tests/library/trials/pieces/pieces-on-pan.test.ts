import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { slabThickness } from "../../../../kernel-lib/library/src/pan/slab-thickness";
import { panOf, variantOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { type PiecesOnPan, piecesOnPan } from "../../../../kernel-lib/library/src/trials/pieces/pieces-on-pan";

const kitchen = loadKitchen();
function pieces(variantId: string, panId: string): PiecesOnPan {
  const variant = variantOf(kitchen, variantId);
  const pan = panOf(kitchen, panId);
  const slab = slabThickness({ pan, batchG: variant.batchG, densityKgM3: variant.densityKgM3 });
  return piecesOnPan({ kitchen, variant, pan, slab });
}

describe("piecesOnPan", () => {
  it("cuts the variant's own rows and columns on its own pan", () => {
    const { rows, columns } = variantOf(kitchen, "beet-lentil");
    expect(pieces("beet-lentil", "half-sheet")).toMatchObject({ rows, columns, pieces: rows * columns });
  });

  it("cuts pieces of nearly the same size on another pan", () => {
    const own = pieces("beet-lentil", "half-sheet");
    const other = pieces("beet-lentil", "three-quarter-sheet");
    expect(other.pieces).toBeGreaterThan(own.pieces);
    expect(Math.abs(other.pieceLengthMm / own.pieceLengthMm - 1)).toBeLessThan(0.06);
    expect(Math.abs(other.pieceWidthMm / own.pieceWidthMm - 1)).toBeLessThan(0.06);
  });

  it("makes each well one piece, a frustum with both faces and its side", () => {
    const { wells, bottomDiameterMm, wallTaperDeg } = panOf(kitchen, "mini-wells") as {
      wells: number;
      bottomDiameterMm: number;
      wallTaperDeg: number;
    };
    const variant = variantOf(kitchen, "corn-puff");
    const piece = pieces("corn-puff", "mini-wells");
    const { thicknessMm } = slabThickness({
      pan: panOf(kitchen, "mini-wells"),
      batchG: variant.batchG,
      densityKgM3: variant.densityKgM3,
    });
    const [bottom, top] = [
      bottomDiameterMm / 2,
      bottomDiameterMm / 2 + thicknessMm * Math.tan((wallTaperDeg * Math.PI) / 180),
    ];
    const slant = Math.hypot(thicknessMm, top - bottom);
    expect(piece.pieces).toBe(wells);
    expect(piece.pieceG * wells).toBeCloseTo(variant.batchG, 9);
    expect(piece.pieceLengthMm).toBeCloseTo(2 * top, 9);
    expect(piece.surfaceMm2).toBeCloseTo(Math.PI * (bottom ** 2 + top ** 2 + (bottom + top) * slant), 6);
  });
});
