import { describe, expect, it } from "vitest";
import type { CoatingLayer } from "../../../kernel-lib/library/src/food/formula/formula";
import { pieceOf } from "../../../kernel-lib/library/src/pan/piece";
import { coatPiece } from "../../../kernel-lib/library/src/yield/coat-piece";

const layer = (more: Partial<CoatingLayer>): CoatingLayer => ({
  layer: "breading",
  lines: [],
  pickupPercent: 10,
  pickupBasis: "substrate",
  pickupSePercent: 1,
  ...more,
});

describe("coatPiece", () => {
  it("puts each layer on the weight that goes into it", () => {
    const coated = coatPiece({ layers: [layer({ layer: "predust" }), layer({})], pieceG: 20 });
    expect(coated.layers.map((one) => one.afterG)).toEqual([22, expect.closeTo(24.2, 10)]);
    expect(coated.coatingPercent).toBeCloseTo((100 * 4.2) / 24.2, 10);
    expect(coated.layers[0].layerSeG).toBeCloseTo(0.2, 12);
  });

  it("means the same layer by 20 % of the substrate and 16.667 % of the finished weight", () => {
    const one = coatPiece({ layers: [layer({ pickupPercent: 20 })], pieceG: 30 }).layers[0];
    const other = coatPiece({ layers: [layer({ pickupPercent: 100 / 6, pickupBasis: "finished" })], pieceG: 30 })
      .layers[0];
    expect(other.layerG).toBeCloseTo(one.layerG, 10);
    expect(other.substratePercent).toBeCloseTo(20, 10);
    expect(other.layerSeG).toBeCloseTo(one.layerSeG * 1.2 ** 2, 10);
  });

  it("takes more for each gram on a thin or small piece: the same mass a square centimetre", () => {
    const at = { lengthMm: 40, widthMm: 40, densityKgM3: 1050 };
    const layers = [layer({ atSurfaceCm2PerG: 2.5 })];
    const coatings = [
      { ...at, thicknessMm: 6 },
      { ...at, thicknessMm: 12 },
      { ...at, lengthMm: 20, widthMm: 20, thicknessMm: 12 },
    ].map((size) => {
      const piece = pieceOf(size);
      const coated = coatPiece({ layers, pieceG: piece.massG, surfaceMm2: piece.surfaceMm2 });
      return { percent: coated.layers[0].substratePercent, perCm2: coated.layers[0].layerG / (piece.surfaceMm2 / 100) };
    });
    expect(coatings[0].percent).toBeGreaterThan(coatings[1].percent);
    expect(coatings[2].percent).toBeGreaterThan(coatings[1].percent);
    expect(coatings[1].perCm2).toBeCloseTo(coatings[0].perCm2, 12);
    expect(coatings[2].perCm2).toBeCloseTo(coatings[0].perCm2, 12);
  });

  it("refuses a piece without mass or surface", () => {
    expect(() => coatPiece({ layers: [], pieceG: 0 })).toThrow("coatPiece: pieceG must be > 0 g");
    expect(() => coatPiece({ layers: [], pieceG: 5, surfaceMm2: -1 })).toThrow("surfaceMm2");
  });
});
