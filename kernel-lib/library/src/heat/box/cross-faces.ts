import { conductivityOf, potentialOf } from "./box-food";
import type { BoxState } from "./box-state";
import { bendToMiddle } from "./core-reading";
import { surfaceBalance } from "./surface-balance";

/** Lets heat and vapour cross the faces of a box, and says how fast their crusts grow. */
export function crossFaces(state: BoxState, y: Float64Array, f: Float64Array): void {
  const { grid, ledger, sides, above, below, recedes, frontAbove, frontBelow, frontX, frontY } = state;
  const { nx, ny, nz, layer, halfThickness, wx, wy, wz } = grid;
  const { dimX, dimY, dimZ, airAboveC, airBelowC, airSidesC } = state;
  const crust = (at: number): number => (recedes ? y[at] : 0);
  const areaZ = dimX * dimY;
  const top = layer * (nz - 1);
  const topGap = 0.5 * wz[nz - 1] * dimZ;
  const bottomGap = 0.5 * wz[0] * dimZ;
  const crustAbove = crust(ledger.crustAbove);
  const crustBelow = crust(ledger.crustBelow);
  let waterAbove = 0;
  let waterBelow = 0;
  let waterX = 0;
  let waterY = 0;
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) {
      const at = i + nx * j;
      const area = wx[i] * wy[j] * areaZ;
      waterAbove += cross(
        state,
        f,
        top + at,
        area,
        airAboveC,
        above.coefficientWm2K,
        crustAbove,
        topGap,
        frontAbove,
        at,
      );
      if (halfThickness) continue;
      waterBelow += cross(state, f, at, area, airBelowC, below.coefficientWm2K, crustBelow, bottomGap, frontBelow, at);
    }
  if (sides) {
    const h = sides.coefficientWm2K;
    const gapX = 0.5 * wx[nx - 1] * dimX;
    const gapY = 0.5 * wy[ny - 1] * dimY;
    const crustX = crust(ledger.crustX);
    const crustY = crust(ledger.crustY);
    for (let k = 0; k < nz; k++) {
      for (let j = 0; j < ny; j++) {
        const cell = nx - 1 + nx * j + layer * k;
        waterX += cross(state, f, cell, wy[j] * wz[k] * dimY * dimZ, airSidesC, h, crustX, gapX, frontX, j + ny * k);
      }
      for (let i = 0; i < nx; i++) {
        const cell = i + nx * (ny - 1) + layer * k;
        waterY += cross(state, f, cell, wx[i] * wz[k] * dimX * dimZ, airSidesC, h, crustY, gapY, frontY, i + nx * k);
      }
    }
  }
  if (!recedes) return;
  f[ledger.crustAbove] = waterAbove / areaZ / state.crustWaterKgM3;
  f[ledger.crustBelow] = waterBelow / areaZ / state.crustWaterKgM3;
  if (sides) {
    f[ledger.crustX] = waterX / (dimY * dimZ) / state.crustWaterKgM3;
    f[ledger.crustY] = waterY / (dimX * dimZ) / state.crustWaterKgM3;
  }
}

/** Outer surfaces and fronts in the middle of the top and the bottom, for what `readState` saw last. */
export function readSurfaces(state: BoxState, y: Float64Array): void {
  const { grid, ledger, recedes } = state;
  const top = grid.layer * (grid.nz - 1);
  const crustAboveM = recedes ? y[ledger.crustAbove] : 0;
  const crustBelowM = recedes ? y[ledger.crustBelow] : 0;
  const { airAboveC, airBelowC, frontAbove, frontBelow } = state;
  state.surfaceAboveC = surface(
    state,
    top,
    -grid.layer,
    airAboveC,
    state.above.coefficientWm2K,
    crustAboveM,
    frontAbove,
  );
  state.surfaceBelowC = grid.halfThickness
    ? state.surfaceAboveC
    : surface(state, 0, grid.layer, airBelowC, state.below.coefficientWm2K, crustBelowM, frontBelow);
}

/** Outer surface in the middle of one face [°C]; `inwards` leads to the next cell. */
function surface(
  state: BoxState,
  cell: number,
  inwards: number,
  airC: number,
  coefficient: number,
  crustM: number,
  fronts: Float64Array,
): number {
  const { grid, flow, temperature } = state;
  balance(state, cell, airC, coefficient, crustM, 0.5 * grid.wz[0] * state.dimZ, fronts, 0);
  if (coefficient > 0) return airC - flow.heatIn / coefficient;
  // an insulated face is a plane of symmetry
  return temperature[cell] - bendToMiddle(temperature[cell], temperature[cell + inwards], grid.wz);
}

/** Lets heat and vapour cross one face of one cell; returns the vapour [kg/s]. */
function cross(
  state: BoxState,
  f: Float64Array,
  cell: number,
  area: number,
  airC: number,
  coefficient: number,
  crustM: number,
  gap: number,
  fronts: Float64Array,
  at: number,
): number {
  const { flow, ledger } = state;
  balance(state, cell, airC, coefficient, crustM, gap, fronts, at);
  const vapour = area * flow.vapour;
  f[cell] += (area * flow.heatToCore) / state.food.densityKgM3;
  f[ledger.heatIn] += area * flow.heatIn;
  f[ledger.lost] += vapour;
  f[ledger.carried] += area * (flow.heatIn - flow.heatToCore);
  return vapour;
}

/** `surfaceBalance` of one face of one cell; keeps its front, where a wet one starts to look next time. */
function balance(
  state: BoxState,
  cell: number,
  airC: number,
  coefficient: number,
  crustM: number,
  gap: number,
  fronts: Float64Array,
  at: number,
): void {
  const { flow, temperature } = state;
  const cellC = temperature[cell];
  const perM2K =
    airC < cellC ? coolingConductance(state, cell, airC, coefficient, gap) : conductivityOf(state.food, cellC) / gap;
  flow.guessC = fronts[at];
  surfaceBalance(flow, state.drying, airC, coefficient, crustM, perM2K, cellC);
  fronts[at] = flow.frontC;
}

/**
 * What half a cell conducts to a colder face [W/(m²·K)]: the frozen food towards the face conducts better than the
 * middle of the cell, so its potentials decide, by Newton's steps for the front. While it warms the middle conducts
 * better, and errs less.
 */
function coolingConductance(state: BoxState, cell: number, airC: number, coefficient: number, gap: number): number {
  const { food, temperature, potential } = state;
  const cellC = temperature[cell];
  const middle = conductivityOf(food, cellC) / gap;
  let frontC = cellC + (airC - cellC) / (1 + middle / coefficient);
  if (frontC >= food.freezingC || cellC - frontC < 1e-3) return middle;
  let moveK = 1;
  for (let step = 0; step < 4 && Math.abs(moveK) > 0.1; step++) {
    const missing = coefficient * (airC - frontC) + (potential[cell] - potentialOf(food, frontC)) / gap;
    moveK = missing / (coefficient + conductivityOf(food, frontC) / gap);
    frontC += moveK;
  }
  return (coefficient * (frontC - airC)) / (cellC - frontC);
}
