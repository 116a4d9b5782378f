import type { ThermalModel } from "../../food/thermal/thermal-properties";
import { browningOf, browningTableOf } from "../clocks/browning-clock";
import type { BrowningTable } from "../clocks/browning-table";
import { type ClockBasis, clockBasis } from "../clocks/clock-basis";
import { coreProbe } from "../clocks/core-clock";
import { crispMin, crustMmAt, lossPercentOf } from "../clocks/crust-clock";
import { airAtLoadC } from "../clocks/load-effect";
import { heatedMin } from "../clocks/look-cost";
import { brownScoreAt, crispScoreAt, meanWritten } from "../clocks/panel-score";
import type { PieceConstants } from "../clocks/piece-constants";
import { censoredResidual } from "./censored-residual";
import { type CrispNoise, pieceCoreSpread, probedMm, SETTING_MISFIT } from "./crisp-noise";
import type { CrispObservation } from "./crisp-observation";
import { type CrispPrior, priorValue } from "./crisp-priors";
import { pieceAt } from "./piece-at";

/** What `crispResiduals` works from: checked, and nothing left out. */
export interface CrispResidualsOptions {
  readonly food: ThermalModel;
  readonly observations: readonly CrispObservation[];
  readonly applianceIds: readonly string[];
  readonly priors: readonly CrispPrior[];
  /** thickness of a coating (mm); Infinity when one water density serves the whole crust */
  readonly coatingMm: number;
  /** piece-to-piece coefficient of variation of the thickness [-] */
  readonly unevenness: number;
}

/** What was measured: a kind of noise each. */
export type Measured = "crispTime" | "coreK" | "lossPercent" | "crispScore" | "brownScore";

/** One measurement's place in the residuals. */
export interface Slot {
  /** which trial, by position */
  readonly trial: number;
  readonly kind: Measured;
  /** tells of the noise: a one-sided check does not */
  readonly telling: boolean;
}

/** What several measurements share, as the change of each residual over one standard deviation of it. */
export interface SharedEffects {
  /** the run's coefficient */
  readonly run: Float64Array;
  /** the slab's thickness */
  readonly thickness: Float64Array;
  /** what the clocks miss at the setting: core, crust, browning */
  readonly core: Float64Array;
  readonly crust: Float64Array;
  readonly brown: Float64Array;
}

/** The measurements of a calibration as residuals, ready for a search over z. */
export interface CrispResiduals {
  readonly observations: readonly CrispObservation[];
  readonly slots: readonly Slot[];
  /** residuals over the standard deviations of their own noise at z */
  readonly residualsAt: (z: ArrayLike<number>, noise: CrispNoise) => Float64Array;
  readonly effectsAt: (z: ArrayLike<number>, noise: CrispNoise) => SharedEffects;
}

/** A core reading further off than this many standard deviations pulls no harder: a misread probe must not steer. */
const FAR = 2.5;

/** Turns the trials of a calibration into residuals. */
export function crispResiduals(options: CrispResidualsOptions): CrispResiduals {
  const { food, observations, applianceIds, priors, coatingMm, unevenness } = options;
  const innerWaterKgM3 = food.densityKgM3 * food.waterFraction;
  const bases = observations.map(basisCache(food));
  const slots = observations.flatMap(slotsOf);
  type Change = (piece: PieceConstants, seen: CrispObservation) => { piece: PieceConstants; thicknessMm: number };
  const asIs: Change = (piece, seen) => ({ piece, thicknessMm: seen.thicknessMm });
  const rawAt = (z: ArrayLike<number>, noise: CrispNoise, change: Change): Float64Array => {
    const values = priors.map((prior, at) => priorValue(prior, z[at]));
    const out = new Float64Array(slots.length);
    const tables = new Map<number, BrowningTable>();
    let from = 0;
    for (let at = 0; at < observations.length; at++) {
      const seen = observations[at];
      const own = pieceAt({ values, applianceIds, place: seen, coatingMm, innerWaterKgM3 });
      const changed = change(own, seen);
      const table = tables.get(bases[at].airC) ?? browningTableOf(bases[at], own);
      tables.set(bases[at].airC, table);
      from = writeResiduals({ out, from, seen, basis: bases[at], noise, unevenness, table, ...changed });
    }
    return out;
  };
  return {
    observations,
    slots,
    residualsAt: (z, noise) => rawAt(z, noise, asIs),
    effectsAt: (z, noise) => {
      const own = rawAt(z, noise, asIs);
      const changeBy = (change: Change): Float64Array => rawAt(z, noise, change).map((value, at) => value - own[at]);
      const along = (alter: (piece: PieceConstants) => PieceConstants): Float64Array =>
        changeBy((piece, seen) => ({ piece: alter(piece), thicknessMm: seen.thicknessMm }));
      const { misfit } = noise;
      return {
        run: along((piece) => ({ ...piece, coefficientWm2K: piece.coefficientWm2K * Math.exp(noise.run) })),
        thickness: changeBy((piece, seen) => ({ piece, thicknessMm: seen.thicknessMm + seen.thicknessSeMm })),
        core: along((piece) => ({ ...piece, coreFactor: piece.coreFactor * Math.exp(misfit * SETTING_MISFIT.core) })),
        crust: along((piece) => ({
          ...piece,
          crustFactor: piece.crustFactor * Math.exp(misfit * SETTING_MISFIT.crust),
        })),
        brown: along((piece) => ({
          ...piece,
          browningPerS: piece.browningPerS * Math.exp(misfit * SETTING_MISFIT.brown),
        })),
      };
    },
  };
}

/** One basis for each start and air temperature: the core limit does not matter for a calibration. */
function basisCache(food: ThermalModel): (seen: CrispObservation) => ClockBasis {
  const known = new Map<string, ClockBasis>();
  return (seen) => {
    const airC = airAtLoadC(seen.setpointC, seen.loadFraction);
    const key = `${seen.startC} ${airC}`;
    const basis = known.get(key) ?? clockBasis({ food, startC: seen.startC, airC, limitC: 74 });
    known.set(key, basis);
    return basis;
  };
}

function slotsOf(seen: CrispObservation, trial: number): Slot[] {
  const slots: Slot[] = [];
  if (seen.notCrispMin !== null || seen.crispMin !== null)
    slots.push({ trial, kind: "crispTime", telling: seen.notCrispMin !== null && seen.crispMin !== null });
  if (seen.coreC !== null) slots.push({ trial, kind: "coreK", telling: true });
  if (seen.restedCoreC !== null) slots.push({ trial, kind: "coreK", telling: true });
  if (seen.lossPercent !== null) slots.push({ trial, kind: "lossPercent", telling: true });
  if (seen.crispScores.length > 0) slots.push({ trial, kind: "crispScore", telling: true });
  if (seen.brownScores.length > 0) slots.push({ trial, kind: "brownScore", telling: true });
  return slots;
}

/** What `writeResiduals` works from. */
interface OneTrial {
  readonly out: Float64Array;
  readonly from: number;
  readonly seen: CrispObservation;
  readonly basis: ClockBasis;
  readonly piece: PieceConstants;
  readonly table: BrowningTable;
  readonly noise: CrispNoise;
  readonly unevenness: number;
  readonly thicknessMm: number;
}

/** Writes the residuals of one trial, in the order of `slotsOf`, each over the standard deviation of its own noise. */
function writeResiduals(trial: OneTrial): number {
  const { out, from, seen, basis, piece, table, noise, unevenness, thicknessMm } = trial;
  const timeMin = heatedMin(seen.looksMin, seen.timeMin);
  let at = from;
  if (seen.notCrispMin !== null || seen.crispMin !== null) {
    const modelMin = Math.min(crispMin(basis, piece, thicknessMm), 1e4);
    const off = (checkMin: number): number => Math.log(heatedMin(seen.looksMin, checkMin) / modelMin) / noise.crispTime;
    const below = seen.notCrispMin === null || seen.notCrispMin === 0;
    out[at++] = censoredResidual(
      below ? Number.NEGATIVE_INFINITY : off(seen.notCrispMin as number),
      seen.crispMin === null ? Number.POSITIVE_INFINITY : off(seen.crispMin),
    );
  }
  if (seen.coreC !== null || seen.restedCoreC !== null) {
    const probe = coreProbe(basis, piece, probedMm(thicknessMm, unevenness));
    const coreMin = heatedMin(seen.looksMin, seen.timeMin, piece.lookMin);
    for (const rested of [false, true]) {
      const read = rested ? seen.restedCoreC : seen.coreC;
      if (read === null) continue;
      const modelC = probe(coreMin, rested);
      const laterC = probe((1 + pieceCoreSpread(unevenness)) * coreMin, rested);
      out[at++] = heldBack((read - modelC) / Math.hypot(noise.coreK, laterC - modelC));
    }
  }
  const depthMm = crustMmAt(basis, piece, thicknessMm, timeMin);
  if (seen.lossPercent !== null)
    out[at++] = (seen.lossPercent - lossPercentOf(basis, piece, thicknessMm, depthMm)) / noise.lossPercent;
  if (seen.crispScores.length > 0) {
    const score = crispScoreAt(depthMm, piece.crustMm, piece.panelWidthMm);
    out[at++] = scoreResidual(seen.crispScores, score, noise.crispScore);
  }
  if (seen.brownScores.length > 0) {
    const browning = browningOf(basis, piece, thicknessMm, depthMm, table);
    out[at++] = scoreResidual(seen.brownScores, brownScoreAt(browning, piece.brownSteepness), noise.brownScore);
  }
  return at;
}

/** A residual that grows with its root beyond `FAR` (Huber): its square then grows as its size. */
function heldBack(residual: number): number {
  const size = Math.abs(residual);
  return size <= FAR ? residual : Math.sign(residual) * Math.sqrt(FAR * (2 * size - FAR));
}

function scoreResidual(scores: readonly number[], model: number, tasterSd: number): number {
  const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
  return ((mean - meanWritten(model, tasterSd)) / tasterSd) * Math.sqrt(scores.length);
}
