import type { BoxState } from "./box-state";

/** What is read off a box: temperatures in its middle column, and how far its core is from thawed. */
export interface CoreReading {
  /** along the thickness, through the middle [°C] */
  readonly column: Float64Array;
  /** the slowest point: coldest while heating, warmest while cooling [°C] */
  coreC: number;
  /** in the middle of the thickness as it was at the start [°C] */
  midPlaneC: number;
  /** over the wet part [°C] */
  meanC: number;
  /** the core thaws when this passes 0 [K] */
  thawLeadK: number;
}

/** How many times faster than its lead the core's reading leaves the freezing point, until it has caught up. */
const CATCH_UP = 3;

/** Prepares the reading of a box; call `read` after `readState`. */
export function coreReader(
  state: BoxState,
  heating: boolean,
): { readonly reading: CoreReading; readonly read: () => void } {
  const { grid, food, temperature } = state;
  const { nx, ny, nz, layer, isPiece, halfThickness, wx, wy, wz } = grid;
  const { freezingC } = food;
  const freezes = food.latentJkg > 0;
  const column = new Float64Array(nz);
  /** for each layer, what a front that closes in along the sides takes off its middle [K] */
  const kinks = new Float64Array(nz);
  const reading: CoreReading = { column, coreC: 0, midPlaneC: 0, meanC: 0, thawLeadK: 0 };

  const readColumn = (): void => {
    for (let k = 0; k < nz; k++) {
      const own = temperature[layer * k];
      column[k] = own;
      if (!isPiece) continue;
      const alongX = temperature[layer * k + 1];
      const alongY = temperature[layer * k + nx];
      column[k] -= bendToMiddle(own, sameSide(own, alongX), wx) + bendToMiddle(own, sameSide(own, alongY), wy);
      kinks[k] = wedgeToMiddle(own, alongX, wx) + wedgeToMiddle(own, alongY, wy);
    }
  };
  /** A neighbour beyond the freezing front counts as at the freezing point: it says nothing of the slope on this side. */
  const sameSide = (own: number, other: number): number =>
    freezes && own < freezingC !== other < freezingC ? freezingC : other;
  /**
   * A front that closes in from both sides leaves a wedge: only when its tip is thawed is the core. Until then the core
   * stays at its freezing point, then it catches up with the smooth reading.
   */
  const throughThaw = (own: number, smooth: number, wedge: number): number => {
    reading.thawLeadK = own - wedge - freezingC;
    if (!(heating && freezes && own > freezingC)) return smooth;
    return Math.min(smooth, freezingC + CATCH_UP * Math.max(0, reading.thawLeadK));
  };
  const readCore = (): void => {
    if (halfThickness) {
      const own = temperature[0];
      const next = temperature[layer];
      const smooth = column[0] - bendToMiddle(own, sameSide(own, next), wz);
      reading.coreC = throughThaw(own, smooth, kinks[0] + wedgeToMiddle(own, next, wz));
      return;
    }
    const sign = heating ? 1 : -1;
    const k = slowestCell(column, sign);
    const own = temperature[layer * k];
    // an insulated face mirrors the column
    const first = k === 0 && state.below.coefficientWm2K > 0;
    const last = k === nz - 1 && state.above.coefficientWm2K > 0;
    let core = column[k];
    reading.thawLeadK = core - freezingC;
    if (!first && !last) {
      const under = temperature[layer * Math.max(0, k - 1)];
      const over = temperature[layer * Math.min(nz - 1, k + 1)];
      const smooth = column[k] - sign * bendToTurn(sign * own, sign * sameSide(own, under), sign * sameSide(own, over));
      core = throughThaw(own, smooth, kinks[k] + wedgeToTurn(own, under, over));
    }
    reading.coreC = sign * Math.min(sign * core, sign * state.frontBelow[0], sign * state.frontAbove[0]);
  };
  const readMidPlane = (): void => {
    if (halfThickness) {
      reading.midPlaneC = reading.coreC;
      return;
    }
    const { dimZ, crustBelowM, frontAbove, frontBelow, surfaceAboveC, surfaceBelowC } = state;
    const height = grid.lengthZ / 2;
    const crustAboveM = grid.lengthZ - dimZ - crustBelowM;
    const inCrust = (depthM: number, crustM: number, frontC: number, surfaceC: number): number =>
      surfaceC + (depthM / crustM) * (frontC - surfaceC);
    if (height < crustBelowM) reading.midPlaneC = inCrust(height, crustBelowM, frontBelow[0], surfaceBelowC);
    else if (height < crustAboveM) reading.midPlaneC = inCrust(height, crustAboveM, frontAbove[0], surfaceAboveC);
    else reading.midPlaneC = alongColumn(column, (nz * (height - crustBelowM)) / dimZ, frontBelow[0], frontAbove[0]);
  };
  return {
    reading,
    read: () => {
      readColumn();
      readCore();
      readMidPlane();
      let sum = 0;
      for (let k = 0, cell = 0; k < nz; k++)
        for (let j = 0; j < ny; j++)
          for (let i = 0; i < nx; i++, cell++) sum += wx[i] * wy[j] * wz[k] * temperature[cell];
      reading.meanC = sum;
    },
  };
}

/** From the first cell to the plane of symmetry, on the parabola with no slope there. */
export function bendToMiddle(first: number, second: number, widths: Float64Array): number {
  const x0 = widths[0] / 2;
  const x1 = widths[0] + widths[1] / 2;
  return ((second - first) * x0 * x0) / (x1 * x1 - x0 * x0);
}

/** From the first cell to the plane of symmetry, on a straight line. */
export function wedgeToMiddle(first: number, second: number, widths: Float64Array): number {
  return ((second - first) * widths[0]) / (widths[0] + widths[1]);
}

/** Coldest cell for sign 1, warmest for −1; of cells alike the middle one. */
export function slowestCell(column: Float64Array, sign: number): number {
  let slowest = 0;
  let alike = 1;
  for (let k = 1; k < column.length; k++) {
    if (sign * column[k] < sign * column[slowest]) {
      slowest = k;
      alike = 1;
    } else if (k === slowest + alike && column[k] === column[slowest]) alike++;
  }
  return slowest + Math.floor((alike - 1) / 2);
}

/** From the lowest of three even cells down to the turn of their parabola. */
export function bendToTurn(own: number, under: number, over: number): number {
  const bend = under - 2 * own + over;
  const slope = (over - under) / 2;
  return bend > 0 ? Math.min((slope * slope) / (2 * bend), bend / 8) : 0;
}

/**
 * From the lowest of three even cells down to the tip of the wedge with sides alike that has their means: with slope g
 * for each cell and the tip δ of a cell from the middle, own = g(1/4 + δ²), under − over = 2gδ, under + over = 2g.
 */
export function wedgeToTurn(own: number, under: number, over: number): number {
  const bend = Math.max(0, under + over - 2 * own);
  const lean = under - over;
  const slope = (bend + Math.sqrt(bend * bend + 3 * lean * lean)) / 3;
  return slope > 0 ? slope / 4 + (lean * lean) / (4 * slope) : 0;
}

/** Temperature at a height counted in even cells from the bottom: a cubic through four cells, or what there is of them. */
function alongColumn(column: Float64Array, cells: number, bottomC: number, topC: number): number {
  const count = column.length;
  const k = Math.floor(cells - 0.5);
  const u = cells - 0.5 - k;
  if (k < 0) return bottomC + 2 * cells * (column[0] - bottomC);
  if (k >= count - 1) return topC + 2 * (count - cells) * (column[count - 1] - topC);
  if (k < 1 || k > count - 3) return column[k] + u * (column[k + 1] - column[k]);
  const [a, b, c, d] = [column[k - 1], column[k], column[k + 1], column[k + 2]];
  const cubic =
    (-u * (u - 1) * (u - 2) * a) / 6 +
    ((u + 1) * (u - 1) * (u - 2) * b) / 2 -
    ((u + 1) * u * (u - 2) * c) / 2 +
    ((u + 1) * u * (u - 1) * d) / 6;
  // across a front the cubic may leave the cells that it lies between
  const low = Math.min(a, b, c, d);
  const high = Math.max(a, b, c, d);
  return Math.min(high, Math.max(low, cubic));
}
