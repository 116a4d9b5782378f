import { type BoxFood, boxFood } from "./box-food";
import type { BoxGrid } from "./box-grid";
import type { BoxProblem } from "./box-problem";
import { airAt, type FaceAir } from "./face-air";
import type { DryingConstants, FaceFlow } from "./surface-balance";

/** Where the state's array holds, after the heat of its cells [J/kg·m³], what else runs along. */
export interface BoxLedger {
  /** crust [m] */
  readonly crustBelow: number;
  readonly crustAbove: number;
  readonly crustX: number;
  readonly crustY: number;
  /** heat from the air [J] */
  readonly heatIn: number;
  /** heat carried off by water and by what the fronts left behind [J] */
  readonly carried: number;
  /** water lost [kg] */
  readonly lost: number;
  /** length of the whole array */
  readonly size: number;
}

/** The box as it stands: what `readState` saw last, and the surroundings of the stretch at hand. */
export interface BoxState {
  readonly grid: BoxGrid;
  readonly food: BoxFood;
  readonly drying: DryingConstants;
  readonly crustWaterKgM3: number;
  /** fronts recede under a crust */
  readonly recedes: boolean;
  readonly ledger: BoxLedger;
  readonly sides?: FaceAir;
  /** they change places when the food is turned over */
  above: FaceAir;
  below: FaceAir;
  /** a time inside the stretch at hand [s] */
  within: number;
  airAboveC: number;
  airBelowC: number;
  airSidesC: number;
  /** wet lengths [m] */
  dimX: number;
  dimY: number;
  dimZ: number;
  /** dry below the wet core [m] */
  crustBelowM: number;
  readonly temperature: Float64Array;
  /** Kirchhoff's potential [W/m] */
  readonly potential: Float64Array;
  /** enthalpy [J/kg] */
  readonly specific: Float64Array;
  /** edges of the wet core [°C] */
  readonly frontAbove: Float64Array;
  readonly frontBelow: Float64Array;
  readonly frontX: Float64Array;
  readonly frontY: Float64Array;
  /** outer surfaces in the middle of the faces [°C] */
  surfaceAboveC: number;
  surfaceBelowC: number;
  /** what `surfaceBalance` writes into */
  readonly flow: FaceFlow;
}

/** A box at its start. */
export function boxState(problem: BoxProblem, grid: BoxGrid): BoxState {
  const { total, nx, ny, nz } = grid;
  const { startC, drying } = problem;
  const front = (count: number): Float64Array => new Float64Array(count).fill(startC);
  return {
    grid,
    food: boxFood(problem.food),
    drying,
    crustWaterKgM3: problem.crustWaterKgM3,
    recedes: drying.law === "receding-front" || drying.law === "wet-front",
    ledger: {
      crustBelow: total,
      crustAbove: total + 1,
      crustX: total + 2,
      crustY: total + 3,
      heatIn: total + 4,
      carried: total + 5,
      lost: total + 6,
      size: total + 7,
    },
    sides: problem.sides,
    above: problem.above,
    below: problem.below,
    within: 0,
    airAboveC: 0,
    airBelowC: 0,
    airSidesC: 0,
    dimX: grid.lengthX,
    dimY: grid.lengthY,
    dimZ: grid.lengthZ,
    crustBelowM: 0,
    temperature: new Float64Array(total),
    potential: new Float64Array(total),
    specific: new Float64Array(total),
    frontAbove: front(nx * ny),
    frontBelow: front(nx * ny),
    frontX: front(ny * nz),
    frontY: front(nx * nz),
    surfaceAboveC: startC,
    surfaceBelowC: startC,
    flow: { heatIn: 0, heatToCore: 0, frontC: 0, vapour: 0, guessC: 0 },
  };
}

/** Air of all faces at a time [s]. */
export function readAir(state: BoxState, t: number): void {
  state.airAboveC = airAt(state.above, t, state.within);
  state.airBelowC = airAt(state.below, t, state.within);
  if (state.sides) state.airSidesC = airAt(state.sides, t, state.within);
}

/** Wet lengths, temperatures and potentials of an array. */
export function readState(state: BoxState, y: Float64Array): void {
  const { grid, ledger, temperature, potential, specific } = state;
  const { total, perShare } = grid;
  const { thawedJkgK, frozenJkgK, latentJkg, freezingC, thawedWmK, frozenWmK, slopeWm } = state.food;
  state.dimX = grid.lengthX - y[ledger.crustX];
  state.dimY = grid.lengthY - y[ledger.crustY];
  state.crustBelowM = y[ledger.crustBelow];
  state.dimZ = grid.lengthZ - y[ledger.crustAbove] - state.crustBelowM;
  const perVolume = 1 / (state.dimX * state.dimY * state.dimZ);
  const perThawed = 1 / thawedJkgK;
  const b0 = frozenJkgK * freezingC + latentJkg;
  const product = 4 * frozenJkgK * latentJkg * freezingC;
  const half = 1 / (2 * frozenJkgK);
  const perFreezing = 1 / freezingC;
  for (let cell = 0; cell < total; cell++) {
    const h = y[cell] * perVolume * perShare[cell];
    specific[cell] = h;
    if (h >= 0) {
      const above = h * perThawed;
      temperature[cell] = freezingC + above;
      potential[cell] = thawedWmK * above;
    } else {
      const b = b0 + h;
      const c = (b - Math.sqrt(b * b - product)) * half;
      temperature[cell] = c;
      potential[cell] = frozenWmK * (c - freezingC) + slopeWm * Math.log(c * perFreezing);
    }
  }
}
