import { iceShareOf } from "./box-food";
import { placeNodes } from "./box-grid";
import { makeRecorder, type Recorder } from "./box-record";
import { type BoxState, readState } from "./box-state";
import type { CoreReading } from "./core-reading";
import { readSurfaces } from "./cross-faces";

/** Writes the rows of a run. */
export interface RowWriter {
  readonly recorder: Recorder;
  /** writes one row; `readState`, air and fronts must have seen `y` last, `rates` is its dy/dt */
  readonly write: (t: number, y: Float64Array, rates: Float64Array) => void;
}

/** How far ahead the slopes of a row look [s]. */
const AHEAD_S = 1e-3;

/** Prepares the record of a box. */
export function rowWriter(
  state: BoxState,
  core: { readonly reading: CoreReading; readonly read: () => void },
): RowWriter {
  const { grid, ledger, food } = state;
  const { nz, halfThickness } = grid;
  const { reading } = core;
  const recorder = makeRecorder(halfThickness ? 2 * nz + 3 : nz + 2);
  placeNodes(recorder.profilePlace, grid.wz, halfThickness);
  const massKg = food.densityKgM3 * grid.lengthX * grid.lengthY * grid.lengthZ;
  const ahead = new Float64Array(ledger.size);

  const writeProfile = (start: number): void => {
    const { profileC } = recorder;
    if (!halfThickness) {
      profileC[start] = state.frontBelow[0];
      for (let k = 0; k < nz; k++) profileC[start + 1 + k] = reading.column[k];
      profileC[start + nz + 1] = state.frontAbove[0];
      return;
    }
    profileC[start] = state.frontAbove[0];
    profileC[start + nz + 1] = reading.coreC;
    profileC[start + 2 * nz + 2] = state.frontAbove[0];
    for (let k = 0; k < nz; k++) {
      profileC[start + nz - k] = reading.column[k];
      profileC[start + nz + 2 + k] = reading.column[k];
    }
  };
  return {
    recorder,
    write: (t, y, rates) => {
      core.read();
      const row = recorder.next();
      recorder.timeS[row] = t;
      recorder.coreC[row] = reading.coreC;
      recorder.midPlaneC[row] = reading.midPlaneC;
      recorder.surfaceC[row] = state.surfaceAboveC;
      recorder.surfaceBelowC[row] = state.surfaceBelowC;
      recorder.meanC[row] = reading.meanC;
      recorder.thawLeadK[row] = reading.thawLeadK;
      recorder.waterLostFraction[row] = y[ledger.lost] / massKg;
      recorder.crustAboveM[row] = y[ledger.crustAbove];
      recorder.crustBelowM[row] = halfThickness ? y[ledger.crustAbove] : y[ledger.crustBelow];
      recorder.iceFraction[row] = iceFraction(state);
      writeProfile(row * recorder.nodes);

      for (let i = 0; i < ahead.length; i++) ahead[i] = y[i] + AHEAD_S * rates[i];
      readState(state, ahead);
      readSurfaces(state, ahead);
      core.read();
      recorder.coreRate[row] = (reading.coreC - recorder.coreC[row]) / AHEAD_S;
      recorder.midPlaneRate[row] = (reading.midPlaneC - recorder.midPlaneC[row]) / AHEAD_S;
      recorder.surfaceRate[row] = (state.surfaceAboveC - recorder.surfaceC[row]) / AHEAD_S;
      recorder.surfaceBelowRate[row] = (state.surfaceBelowC - recorder.surfaceBelowC[row]) / AHEAD_S;
      recorder.meanRate[row] = (reading.meanC - recorder.meanC[row]) / AHEAD_S;
      recorder.thawLeadRate[row] = (reading.thawLeadK - recorder.thawLeadK[row]) / AHEAD_S;
    },
  };
}

/** Ice by mass of the food at the start [-]. */
function iceFraction(state: BoxState): number {
  const { grid, food, temperature, dimX, dimY, dimZ } = state;
  const { nx, ny, nz, wx, wy, wz } = grid;
  if (food.latentJkg === 0) return 0;
  let sum = 0;
  for (let k = 0, cell = 0; k < nz; k++)
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++, cell++)
        if (temperature[cell] < food.freezingC) sum += wx[i] * wy[j] * wz[k] * iceShareOf(food, temperature[cell]);
  return (sum * dimX * dimY * dimZ) / (grid.lengthX * grid.lengthY * grid.lengthZ);
}
