import type { PiecesOnPan } from "../../trials/pieces/pieces-on-pan";
import { ownLengthText } from "../../units/length-text";
import type { KitchenUnits } from "../../units/unit-table";

/** The cut as people say it: `"7 × 10"`, or how many wells. */
export function cutText(pieces: PiecesOnPan): string {
  return pieces.rows === 1 && pieces.pieceLengthMm === pieces.pieceWidthMm
    ? `${pieces.pieces} wells`
    : `${pieces.rows} × ${pieces.columns}`;
}

/** The piece seen from above: two sides, or a diameter, in the kitchen's own unit, which stands in the heading. */
export function pieceText({ rows, pieceLengthMm, pieceWidthMm }: PiecesOnPan, units: KitchenUnits): string {
  const text = (sides: readonly number[]): string => ownLengthText(sides, units).replace(/ (mm|in)$/, "");
  return rows === 1 && pieceLengthMm === pieceWidthMm
    ? `⌀ ${text([pieceLengthMm])}`
    : text([pieceLengthMm, pieceWidthMm]);
}
