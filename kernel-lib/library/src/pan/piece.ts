import { positive } from "../check/check";

/** What `pieceOf` works from: a box of food. */
export interface PieceOptions {
  /** longer side of the cut (mm) */
  readonly lengthMm: number;
  /** shorter side of the cut (mm) */
  readonly widthMm: number;
  /** thickness of the slab (mm) */
  readonly thicknessMm: number;
  /** density of the mix, air included (kg/m³) */
  readonly densityKgM3: number;
}

/** One cut piece, before coating. */
export interface Piece {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly massG: number;
  /** all six faces (mm²) */
  readonly surfaceMm2: number;
  /** surface over volume (1/mm): the higher, the more coating, crust and loss for each gram */
  readonly surfaceToVolumePerMm: number;
  /** width over thickness; below 4 the edges heat the core noticeably and a slab's time is too long */
  readonly widthOverThickness: number;
}

/**
 * Mass, surface and surface-to-volume ratio of a rectangular piece: 2(1/l + 1/w + 1/t).
 *
 * @example
 * const bite = pieceOf({ lengthMm: 40, widthMm: 40, thicknessMm: 10, densityKgM3: 1050 });
 * bite.massG; // → 16.8
 * bite.surfaceToVolumePerMm; // → 0.3
 */
export function pieceOf(options: PieceOptions): Piece {
  const lengthMm = positive(options.lengthMm, "pieceOf: lengthMm", "mm");
  const widthMm = positive(options.widthMm, "pieceOf: widthMm", "mm");
  const thicknessMm = positive(options.thicknessMm, "pieceOf: thicknessMm", "mm");
  const densityKgM3 = positive(options.densityKgM3, "pieceOf: densityKgM3", "kg/m3");
  return Object.freeze({
    lengthMm,
    widthMm,
    thicknessMm,
    massG: lengthMm * widthMm * thicknessMm * densityKgM3 * 1e-6,
    surfaceMm2: 2 * (lengthMm * widthMm + lengthMm * thicknessMm + widthMm * thicknessMm),
    surfaceToVolumePerMm: 2 * (1 / lengthMm + 1 / widthMm + 1 / thicknessMm),
    widthOverThickness: Math.min(lengthMm, widthMm) / thicknessMm,
  });
}
