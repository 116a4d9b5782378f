import { fail, notNegative, positive } from "../check/check";

/** The cut: so many rows and columns, or pieces near a wanted size. */
export type Cut =
  | { readonly rows: number; readonly columns: number }
  | { readonly pieceLengthMm: number; readonly pieceWidthMm: number };

/** What `cutGrid` works from. */
export interface CutGridOptions {
  /** longer side of the slab (mm) */
  readonly slabLengthMm: number;
  /** shorter side of the slab (mm) */
  readonly slabWidthMm: number;
  readonly cut: Cut;
  /** taken off every edge before cutting (mm); default 0 */
  readonly trimMm?: number;
  /** width that each cut removes (mm): 0 for a knife, about 1 to 2 for a saw; default 0 */
  readonly kerfMm?: number;
}

/** A slab cut in a grid; columns run along the longer side. */
export interface CutGrid {
  readonly rows: number;
  readonly columns: number;
  readonly pieces: number;
  /** longer side of a piece (mm) */
  readonly pieceLengthMm: number;
  /** shorter side of a piece (mm) */
  readonly pieceWidthMm: number;
  /** share of the slab that becomes pieces, 0 to 1: the rest is trim and kerf */
  readonly yieldFraction: number;
}

/**
 * Cuts a slab in equal pieces, by rows × columns or as near as whole numbers allow to a wanted piece size (both ways of
 * laying the piece are tried; the one whose sides come nearer is taken).
 *
 * @example
 * const grid = cutGrid({ slabLengthMm: 420, slabWidthMm: 294, cut: { pieceLengthMm: 50, pieceWidthMm: 40 }, trimMm: 5 });
 * grid.pieces; // → 56
 * grid.pieceLengthMm; // → 51.25
 * grid.yieldFraction; // → 0.9430
 */
export function cutGrid(options: CutGridOptions): CutGrid {
  const trimMm = notNegative(options.trimMm ?? 0, "cutGrid: trimMm", "mm");
  const kerfMm = notNegative(options.kerfMm ?? 0, "cutGrid: kerfMm", "mm");
  const slabLengthMm = positive(options.slabLengthMm, "cutGrid: slabLengthMm", "mm");
  const slabWidthMm = positive(options.slabWidthMm, "cutGrid: slabWidthMm", "mm");
  const alongMm = positive(slabLengthMm - 2 * trimMm, "cutGrid: slab length after trim", "mm");
  const acrossMm = positive(slabWidthMm - 2 * trimMm, "cutGrid: slab width after trim", "mm");
  const { rows, columns } = rowsAndColumns(options.cut, alongMm, acrossMm, kerfMm);
  const columnMm = (alongMm - (columns - 1) * kerfMm) / columns;
  const rowMm = (acrossMm - (rows - 1) * kerfMm) / rows;
  positive(Math.min(columnMm, rowMm), "cutGrid: piece size left after kerf", "mm");
  return Object.freeze({
    rows,
    columns,
    pieces: rows * columns,
    pieceLengthMm: Math.max(columnMm, rowMm),
    pieceWidthMm: Math.min(columnMm, rowMm),
    yieldFraction: (rows * columns * columnMm * rowMm) / (slabLengthMm * slabWidthMm),
  });
}

function rowsAndColumns(
  cut: Cut,
  alongMm: number,
  acrossMm: number,
  kerfMm: number,
): { rows: number; columns: number } {
  if ("rows" in cut) {
    for (const [name, count] of [
      ["rows", cut.rows],
      ["columns", cut.columns],
    ] as const)
      if (!(Number.isInteger(count) && count >= 1)) fail(`cutGrid: ${name}`, "must be a whole number >= 1", count);
    return { rows: cut.rows, columns: cut.columns };
  }
  const lengthMm = positive(cut.pieceLengthMm, "cutGrid: pieceLengthMm", "mm");
  const widthMm = positive(cut.pieceWidthMm, "cutGrid: pieceWidthMm", "mm");
  const count = (sideMm: number, pieceMm: number): number =>
    Math.max(1, Math.round((sideMm + kerfMm) / (pieceMm + kerfMm)));
  const layouts = [
    [lengthMm, widthMm],
    [widthMm, lengthMm],
  ].map(([wantAlongMm, wantAcrossMm]) => {
    const columns = count(alongMm, wantAlongMm);
    const rows = count(acrossMm, wantAcrossMm);
    const miss =
      Math.abs(Math.log(alongMm / columns / wantAlongMm)) + Math.abs(Math.log(acrossMm / rows / wantAcrossMm));
    return { rows, columns, miss };
  });
  return layouts[1].miss < layouts[0].miss ? layouts[1] : layouts[0];
}
