import { largestOf, smallestOf } from "../../statistics/extremes";
import { enthalpyOf } from "./box-food";
import { boxGrid } from "./box-grid";
import type { BoxOutcome, BoxProblem } from "./box-problem";
import type { BoxRecord } from "./box-record";
import { type BoxState, boxState, readAir, readState } from "./box-state";
import { conduct } from "./conduct";
import { coreReader } from "./core-reading";
import { crossFaces, readSurfaces } from "./cross-faces";
import { breakTimes } from "./face-air";
import { fastestDecay } from "./fastest-decay";
import { moveGrid } from "./moving-grid";
import { type DiffusiveSystem, stabilisedSteps, stepWorkspace } from "./stabilised-steps";
import { passesZero, stepCubic } from "./step-cubic";
import { rowWriter } from "./write-row";

/** Least share of the thickness that must stay wet for the run to go on. */
const LEAST_WET = 0.03;

/** Solves the box; see `simulateSlab` and `simulatePiece` for the model. */
export function solveBox(problem: BoxProblem): BoxOutcome {
  const grid = boxGrid(problem);
  const state = boxState(problem, grid);
  const { ledger, food, recedes } = state;
  const { lengthX, lengthY, lengthZ } = grid;
  const volume = lengthX * lengthY * lengthZ;
  const system = systemOf(problem, state);
  const { y } = system;
  const heating = !(largestOf([...problem.above.airC, ...problem.below.airC]) < problem.startC);
  const rows = rowWriter(state, coreReader(state, heating));
  const { recorder } = rows;

  const waterKg = food.waterFraction * food.densityKgM3 * volume;
  const startsFrozen = problem.startC < food.freezingC;
  let coreReached = false;
  let allWaterGone = false;
  const accepted = (t: number, rates: Float64Array): boolean => {
    readSurfaces(state, y);
    rows.write(t, y, rates);
    const { stopCoreC } = problem;
    const last = recorder.coreC[recorder.rows() - 1];
    coreReached = stopCoreC !== undefined && (heating ? last >= stopCoreC : last <= stopCoreC);
    if (y[ledger.lost] > waterKg) recorder.cutLastRow("waterLostFraction", food.waterFraction);
    const wetShare = Math.min(
      (lengthZ - y[ledger.crustAbove] - y[ledger.crustBelow]) / lengthZ,
      1 - y[ledger.crustX] / lengthX,
      1 - y[ledger.crustY] / lengthY,
    );
    allWaterGone = wetShare < LEAST_WET || (!recedes && problem.drying.law !== "none" && y[ledger.lost] >= waterKg);
    return coreReached || allWaterGone;
  };

  const work = stepWorkspace(ledger.size);
  const faces = [problem.above, problem.below, ...(problem.sides ? [problem.sides] : [])];
  const breaks = breakTimes(faces, problem.flipsS, problem.endS);
  let step = problem.fixedStepS ?? Math.min(0.5, problem.endS / 100);
  let [steps, rejected, evaluations] = [0, 0, 0];
  for (let stretch = 0; stretch + 1 < breaks.length && !coreReached && !allWaterGone; stretch++) {
    const [fromS, toS] = [breaks[stretch], breaks[stretch + 1]];
    const flipped = problem.flipsS.filter((flip) => flip <= fromS).length % 2 === 1;
    state.within = (fromS + toS) / 2;
    state.above = flipped ? problem.below : problem.above;
    state.below = flipped ? problem.above : problem.below;
    if (stretch === 0) {
      system.rates(0, y, work.rate0);
      readSurfaces(state, y);
      rows.write(0, y, work.rate0);
    }
    const outcome = stabilisedSteps(system, work, {
      fromS,
      toS,
      firstStepS: Math.min(step, 0.5 + 0.1 * step),
      fixedStepS: problem.fixedStepS,
      accepted,
    });
    step = outcome.nextStepS;
    steps += outcome.steps;
    rejected += outcome.rejected;
    evaluations += outcome.evaluations;
  }
  const record = recorder.finish();
  return {
    record,
    thawedS: startsFrozen && heating ? whenThawed(record) : undefined,
    steps,
    rejected,
    evaluations,
    energyBalanceError: energyBalanceError(problem, state, y),
    heatInJ: y[ledger.heatIn] * (grid.isPiece ? 4 : 1) * (grid.halfThickness ? 2 : 1),
    coreReached,
    allWaterGone,
  };
}

/** The box as a system of rates, at its start. */
function systemOf(problem: BoxProblem, state: BoxState): DiffusiveSystem {
  const { grid, ledger, food, recedes } = state;
  const { total, perShare, lengthX, lengthY, lengthZ } = grid;
  const volume = lengthX * lengthY * lengthZ;
  const startH = enthalpyOf(food, problem.startC);
  const y = new Float64Array(ledger.size);
  const errorScale = new Float64Array(ledger.size);
  const unit = Math.max(problem.tolerance * heatSpan(problem, state), 1e-9);
  for (let cell = 0; cell < total; cell++) {
    y[cell] = (startH * volume) / perShare[cell];
    errorScale[cell] = (unit * volume) / perShare[cell];
  }
  if (recedes) {
    errorScale[ledger.crustAbove] = problem.tolerance * problem.thicknessM;
    if (!grid.halfThickness) errorScale[ledger.crustBelow] = problem.tolerance * problem.thicknessM;
  }
  const rates = (t: number, from: Float64Array, f: Float64Array): void => {
    readState(state, from);
    readAir(state, t);
    f.fill(0);
    conduct(state, f);
    crossFaces(state, from, f);
    if (recedes) moveGrid(state, f);
  };
  return { y, rates, fastestDecay: fastestDecay(state), errorScale };
}

/** Enthalpy between the coldest and the hottest that the food may come to [J/kg]. */
function heatSpan(problem: BoxProblem, state: BoxState): number {
  const faces = [problem.above, problem.below, ...(problem.sides ? [problem.sides] : [])];
  const felt = faces.filter((face) => face.coefficientWm2K > 0).flatMap((face) => face.airC);
  const hottest = Math.max(problem.startC, largestOf(felt));
  const coldest = Math.min(problem.startC, smallestOf(felt));
  const ceiling = problem.drying.law === "none" ? hottest : Math.min(hottest, 100);
  return enthalpyOf(state.food, ceiling) - enthalpyOf(state.food, coldest);
}

/** |heat in − heat stored − heat carried off by water|, as a share of the heat in [-]. */
function energyBalanceError(problem: BoxProblem, state: BoxState, y: Float64Array): number {
  const { grid, ledger, food } = state;
  const volume = grid.lengthX * grid.lengthY * grid.lengthZ;
  let stored = -enthalpyOf(food, problem.startC) * volume;
  for (let cell = 0; cell < grid.total; cell++) stored += y[cell];
  // for a run in which hardly any heat flows: what 0.001 K of the food holds
  const leastHeat = 1e-3 * food.densityKgM3 * food.thawedJkgK * volume;
  const missing = y[ledger.heatIn] - y[ledger.carried] - food.densityKgM3 * stored;
  return Math.abs(missing) / Math.max(Math.abs(y[ledger.heatIn]), leastHeat);
}

/** When the core has thawed [s]; undefined when it has not. */
function whenThawed(record: BoxRecord): number | undefined {
  const { rows, timeS, thawLeadK, thawLeadRate } = record;
  for (let row = 1; row < rows; row++) {
    if (!(thawLeadK[row - 1] < 0 && thawLeadK[row] >= 0)) continue;
    const span = timeS[row] - timeS[row - 1];
    const [fromSlope, toSlope] = [span * thawLeadRate[row - 1], span * thawLeadRate[row]];
    return (
      timeS[row - 1] + span * passesZero((u) => stepCubic(thawLeadK[row - 1], thawLeadK[row], fromSlope, toSlope, u))
    );
  }
  return undefined;
}
