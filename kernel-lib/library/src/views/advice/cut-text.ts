import type { PiecesOnPan } from "../../trials/pieces/pieces-on-pan";

/** The cut as people say it: `"7 × 10"`, or how many wells. */
export function cutText(pieces: PiecesOnPan): string {
  return pieces.rows === 1 && pieces.pieceLengthMm === pieces.pieceWidthMm
    ? `${pieces.pieces} wells`
    : `${pieces.rows} × ${pieces.columns}`;
}

/** The piece seen from above: two sides, or a diameter (mm). */
export function pieceText(pieces: PiecesOnPan): string {
  const [length, width] = [pieces.pieceLengthMm.toFixed(0), pieces.pieceWidthMm.toFixed(0)];
  return pieces.rows === 1 && pieces.pieceLengthMm === pieces.pieceWidthMm ? `⌀ ${length}` : `${length} × ${width}`;
}
