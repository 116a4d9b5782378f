import { fail, notNegative, positive, within } from "../check/check";

/** What `pieceSpread` works from. */
export interface PieceSpreadOptions {
  /** mean mass of a bare piece (g) */
  readonly pieceG: number;
  /** pieces of the batch */
  readonly pieces: number;
  /** mass of the slab they are cut from (g), where known: pieces × mass cannot exceed it */
  readonly batchG?: number;
  /** standard deviation of thickness over the slab on its mean (%), from `evenness` */
  readonly thicknessCvPercent: number;
  /** length and width of a piece (mm) */
  readonly pieceLengthMm: number;
  readonly pieceWidthMm: number;
  /** standard deviation of the place of one cut (mm); 0.5 unless given, our judgement for a guided knife */
  readonly cutSdMm?: number;
}

/** How much pieces of one slab differ. */
export interface PieceSpread {
  readonly pieceG: number;
  /** standard deviation between pieces (g) */
  readonly sdG: number;
  /** the same on the mean (%) */
  readonly cvPercent: number;
  /** share of the variance from thickness, 0 to 1; the rest is the cut */
  readonly shareFromThickness: number;
  /** the middle 95 % of pieces, normal (g) */
  readonly middle95G: readonly [number, number];
  /** standard error of the mean piece of this slab (g): what macros per piece need when pieces are pooled */
  readonly meanStandardErrorG: number;
}

/**
 * Spread of piece mass from the unevenness of the slab and the wander of the cuts. A piece has two cuts across each
 * side, so a side's standard deviation is √2 of one cut's.
 *
 * CV² = CV_thickness² + (√2 s/l)² + (√2 s/w)²
 *
 * @param options piece, slab and cut
 * @returns standard deviation between pieces and the middle 95 %
 * @example
 * const spread = pieceSpread({ pieceG: 20, pieces: 60, thicknessCvPercent: 4, pieceLengthMm: 50, pieceWidthMm: 40, cutSdMm: 0.5 });
 * spread.sdG; // → 0.919
 * pieceSpread({ pieceG: 20, pieces: 60, batchG: 1100, thicknessCvPercent: 4, pieceLengthMm: 50, pieceWidthMm: 40 }); // throws "1200.0 g"
 */
export function pieceSpread(options: PieceSpreadOptions): PieceSpread {
  const pieceG = positive(options.pieceG, "pieceSpread: pieceG", "g");
  const { pieces, batchG } = options;
  if (!(Number.isInteger(pieces) && pieces > 0)) fail("pieceSpread: pieces", "must be a whole number > 0", pieces);
  if (batchG !== undefined && pieces * pieceG > 1.005 * positive(batchG, "pieceSpread: batchG", "g")) {
    fail(
      "pieceSpread: pieces × pieceG",
      `must fit the batch, ${batchG.toFixed(1)} g`,
      `${(pieces * pieceG).toFixed(1)} g`,
    );
  }
  const thickness = within(options.thicknessCvPercent, 0, 60, "pieceSpread: thicknessCvPercent", "%") / 100;
  const cutSdMm = notNegative(options.cutSdMm ?? 0.5, "pieceSpread: cutSdMm", "mm");
  const length = (Math.SQRT2 * cutSdMm) / positive(options.pieceLengthMm, "pieceSpread: pieceLengthMm", "mm");
  const width = (Math.SQRT2 * cutSdMm) / positive(options.pieceWidthMm, "pieceSpread: pieceWidthMm", "mm");
  const cv = Math.hypot(thickness, length, width);
  const sdG = pieceG * cv;
  return Object.freeze({
    pieceG,
    sdG,
    cvPercent: 100 * cv,
    shareFromThickness: cv === 0 ? 0 : (thickness / cv) ** 2,
    middle95G: Object.freeze([pieceG - 1.959964 * sdG, pieceG + 1.959964 * sdG] as const),
    meanStandardErrorG: sdG / Math.sqrt(pieces),
  });
}
