import { describe, expect, it } from "vitest";
import { seededRandom } from "../../../kernel-lib/library/src/statistics/random/seeded-random";
import { pieceSpread } from "../../../kernel-lib/library/src/yield/piece-spread";

const base = { pieceG: 20, pieces: 60, thicknessCvPercent: 5, pieceLengthMm: 50, pieceWidthMm: 40, cutSdMm: 1 };

describe("pieceSpread", () => {
  it("agrees with pieces drawn one by one", () => {
    const random = seededRandom(4);
    const masses = Array.from({ length: 200_000 }, () => {
      const side = (length: number): number => length + random.normal(0, 1) - random.normal(0, 1);
      return 20 * random.normal(1, 0.05) * (side(50) / 50) * (side(40) / 40);
    });
    const mean = masses.reduce((sum, mass) => sum + mass, 0) / masses.length;
    const sd = Math.sqrt(masses.reduce((sum, mass) => sum + (mass - mean) ** 2, 0) / (masses.length - 1));
    expect(Math.abs(pieceSpread(base).sdG / sd - 1)).toBeLessThan(0.01);
  });

  it("splits the variance and narrows for the mean", () => {
    const spread = pieceSpread(base);
    expect(spread.cvPercent).toBeCloseTo(Math.hypot(5, (100 * Math.SQRT2) / 50, (100 * Math.SQRT2) / 40), 10);
    expect(spread.shareFromThickness).toBeCloseTo(25 / spread.cvPercent ** 2, 10);
    expect(spread.meanStandardErrorG).toBeCloseTo(spread.sdG / Math.sqrt(60), 12);
    expect(pieceSpread({ ...base, cutSdMm: 0 }).shareFromThickness).toBe(1);
  });

  it("refuses pieces that cannot come from the batch, naming both masses", () => {
    expect(() => pieceSpread({ ...base, batchG: 1100 })).toThrow(
      'pieceSpread: pieces × pieceG must fit the batch, 1100.0 g, got "1200.0 g"',
    );
  });
});
