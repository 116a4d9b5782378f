import type { BoxProblem } from "./box-problem";
import { sameFaces } from "./face-air";

/** The cells of a box: x along the length, y along the width, z upwards; x and y from the middle to a side. */
export interface BoxGrid {
  readonly isPiece: boolean;
  /** both faces alike: z runs from the middle to the top, otherwise from the bottom to the top */
  readonly halfThickness: boolean;
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  /** cells of one layer */
  readonly layer: number;
  readonly total: number;
  /** widths as shares of the length that is solved */
  readonly wx: Float64Array;
  readonly wy: Float64Array;
  readonly wz: Float64Array;
  /** 1/(own width + next width) */
  readonly perPairX: Float64Array;
  readonly perPairY: Float64Array;
  readonly perPairZ: Float64Array;
  /** 1/(share of the volume), for each cell */
  readonly perShare: Float64Array;
  /** lengths that are solved, at the start [m]; 1 where a slab has no side */
  readonly lengthX: number;
  readonly lengthY: number;
  readonly lengthZ: number;
}

/** Lays the cells of a box: even along the thickness, graded along the sides. */
export function boxGrid(problem: BoxProblem): BoxGrid {
  const { sidesM, thicknessM, cells } = problem;
  const isPiece = sidesM !== undefined;
  const halfThickness = sameFaces(problem.above, problem.below);
  const widths = (side: number): Float64Array =>
    sidesM ? sideCells(cells, sidesM[side] / thicknessM) : Float64Array.of(1);
  const wx = widths(0);
  const wy = widths(1);
  const [nx, ny, nz] = [wx.length, wy.length, halfThickness ? cells : 2 * cells];
  const wz = new Float64Array(nz).fill(1 / nz);
  const perShare = new Float64Array(nx * ny * nz);
  for (let k = 0, cell = 0; k < nz; k++)
    for (let j = 0; j < ny; j++) for (let i = 0; i < nx; i++, cell++) perShare[cell] = 1 / (wx[i] * wy[j] * wz[k]);
  return {
    isPiece,
    halfThickness,
    nx,
    ny,
    nz,
    layer: nx * ny,
    total: nx * ny * nz,
    wx,
    wy,
    wz,
    perPairX: perPair(wx),
    perPairY: perPair(wy),
    perPairZ: perPair(wz),
    perShare,
    lengthX: sidesM ? sidesM[0] / 2 : 1,
    lengthY: sidesM ? sidesM[1] / 2 : 1,
    lengthZ: halfThickness ? thicknessM / 2 : thicknessM,
  };
}

/**
 * Widths from the middle (first) to the surface (last), as shares of half a side that is `aspect` times the thickness.
 *
 * With `cells` over half the thickness: cells·aspect^(1/6) of them, the last √aspect times as wide as those of the
 * thickness, at most twice, each further in wider by the same factor. So the edge is resolved, and the middle of a wide
 * piece is not paid for.
 */
export function sideCells(cells: number, aspect: number): Float64Array {
  const count = Math.round(cells * Math.max(1, aspect) ** (1 / 6));
  const last = Math.min(1 / count, Math.min(2, Math.sqrt(aspect)) / (cells * aspect));
  const sum = (factor: number): number => (factor - 1 < 1e-9 ? count : (factor ** count - 1) / (factor - 1));
  let low = 1;
  let high = 1e3;
  for (let halving = 0; halving < 60; halving++) {
    const factor = (low + high) / 2;
    if (last * sum(factor) < 1) low = factor;
    else high = factor;
  }
  const widths = Float64Array.from({ length: count }, (_, cell) => low ** (count - 1 - cell));
  const all = widths.reduce((one, other) => one + other, 0);
  return widths.map((width) => width / all);
}

function perPair(widths: Float64Array): Float64Array {
  return widths.map((width, cell) => 1 / (width + (cell + 1 < widths.length ? widths[cell + 1] : width)));
}

/** Where the recorded temperatures are, as a share of the thickness: the faces and the middles of the cells. */
export function placeNodes(places: Float64Array, wz: Float64Array, halfThickness: boolean): void {
  const nz = wz.length;
  let low = 0;
  for (let k = 0; k < nz; k++) {
    const middle = low + wz[k] / 2;
    if (halfThickness) {
      places[nz + 2 + k] = 0.5 + middle / 2;
      places[nz - k] = 0.5 - middle / 2;
    } else places[1 + k] = middle;
    low += wz[k];
  }
  if (halfThickness) places[nz + 1] = 0.5;
  places[places.length - 1] = 1;
}
