/** A slab, its pieces and a setting to ask the clocks about. */
export interface AskedOfClocks {
  readonly thicknessMm: number;
  readonly sidesMm: readonly [number, number];
  /** air setting (°C) */
  readonly setpointC: number;
}

/** What `windowAt` takes: mm, mm, °C. */
const THICKNESS_MM = [1, 60] as const;
const SIDE_MM = [3, 1000] as const;
const SETPOINT_C = [130, 290] as const;

/**
 * The nearest slab, piece and setting that the clocks know: a plan for what they do not know is told with the times of that,
 * and is tried like any other.
 *
 * @example
 * withinClocks({ thicknessMm: 0.5, sidesMm: [40, 2], setpointC: 110 }).piece; // → { lengthMm: 40, widthMm: 3 }
 */
export function withinClocks({ thicknessMm, sidesMm, setpointC }: AskedOfClocks): {
  readonly thicknessMm: number;
  readonly piece: { readonly lengthMm: number; readonly widthMm: number };
  readonly setpointC: number;
} {
  return {
    thicknessMm: nearest(thicknessMm, THICKNESS_MM),
    piece: { lengthMm: nearest(sidesMm[0], SIDE_MM), widthMm: nearest(sidesMm[1], SIDE_MM) },
    setpointC: nearest(setpointC, SETPOINT_C),
  };
}

/** Whether the clocks know a slab, its pieces and a setting. */
export function isWithinClocks(asked: AskedOfClocks): boolean {
  const { thicknessMm, piece, setpointC } = withinClocks(asked);
  return (
    thicknessMm === asked.thicknessMm &&
    piece.lengthMm === asked.sidesMm[0] &&
    piece.widthMm === asked.sidesMm[1] &&
    setpointC === asked.setpointC
  );
}

function nearest(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(high, Math.max(low, value));
}
