import { PALETTE, translucent } from "../figure/palette";

/** The grey over the times at which not every piece of a load is surely safe yet, with its words; for a layout. */
export function unsafeTime(safeFromMin: number): {
  readonly shapes: readonly object[];
  readonly annotations: readonly object[];
} {
  return {
    shapes: [
      {
        type: "rect",
        xref: "x",
        yref: "paper",
        x0: 0,
        x1: safeFromMin,
        y0: 0,
        y1: 1,
        fillcolor: translucent(PALETTE[6], 0.08),
        line: { width: 0 },
      },
    ],
    annotations: [
      {
        xref: "x",
        yref: "paper",
        x: safeFromMin / 2,
        y: 0.96,
        text: "core not surely safe",
        showarrow: false,
        font: { size: 11, color: "#555" },
      },
    ],
  };
}
