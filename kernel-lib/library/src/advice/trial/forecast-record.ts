import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import { PLACE_CORE_SPREAD, probedMm } from "../../crisp/calibration/crisp-noise";
import type { CrispObservation } from "../../crisp/calibration/crisp-observation";
import { coreReadingC } from "../../crisp/clocks/core-clock";
import { crispMin, crustMmAt, lossPercentOf } from "../../crisp/clocks/crust-clock";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import { heatedMin } from "../../crisp/clocks/look-cost";
import { misfitAt } from "../../crisp/window/misfit-at";
import { pieceStock, piecesOfStock, typicalPiece } from "../../crisp/window/success-over-time";
import { basisOf, NEVER_MIN, settle } from "../../crisp/window/window-setting";
import { nearestRank } from "../../statistics/nearest-rank";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import type { KitchenUnits } from "../../units/unit-table";
import { observationOf, windowCalibration } from "../window/window-calibration";

/** How far a forecast trial lay from those it was forecast from. */
export type ForecastKind =
  | "the same setting"
  | "another thickness"
  | "another setpoint"
  | "another load"
  | "another appliance";

/** One forecast of one measurement, held against what was logged. */
export interface Forecast {
  readonly variantId: string;
  readonly trialId: string;
  readonly of: "crisp time (min)" | "core (°C)" | "loss (%)";
  readonly kind: ForecastKind;
  /** trials that it was made from: of earlier sessions only */
  readonly from: number;
  readonly expected: number;
  readonly interval90: readonly [number, number];
  /** what was logged; a crisp time as the two checks around it */
  readonly seen: readonly [number, number];
  readonly held: boolean;
}

/** A printed card that somebody followed, and what came of it. */
export interface CardFollowed {
  readonly trialId: string;
  readonly card: string;
  /** core at its limit; null when it was not read */
  readonly safe: boolean | null;
  /** null when nobody looked */
  readonly crisp: boolean | null;
}

/** How the kitchen's forecasts have fared. */
export interface ForecastRecord {
  readonly kind: "forecast record";
  readonly forecasts: readonly Forecast[];
  readonly byKind: readonly { readonly kind: ForecastKind; readonly held: number; readonly made: number }[];
  readonly held: number;
  readonly made: number;
  readonly cards: readonly CardFollowed[];
  readonly sentence: string;
  /** the kitchen's own */
  readonly units: KitchenUnits;
}

/** What `forecastRecord` works from. */
export interface ForecastRecordOptions {
  readonly kitchen: Kitchen;
  /** only this variant; default: all */
  readonly variantId?: string;
  /** called with the share done, 0 to 1 */
  readonly progress?: (done: number) => void;
}

/** Sessions are forecast from at least so many earlier trials. */
const LEAST_EARLIER = 3;
const DRAWS = 300;

/**
 * The tool's score on itself: every trial is forecast from the trials of earlier sessions only, as it would have been on
 * that morning, and its 90 % intervals for crisp time, core and loss are held against what was then logged. A crisp time
 * between two checks is held when the interval reaches into the gap.
 *
 * @example
 * const record = forecastRecord({ kitchen: loadKitchen(), variantId: "pollock-dill" });
 * record.made > 10; // → true
 */
export function forecastRecord(options: ForecastRecordOptions): ForecastRecord {
  const { kitchen, progress } = options;
  const variantIds =
    options.variantId === undefined
      ? kitchen.variants.map((variant) => variant.variantId)
      : [variantOf(kitchen, options.variantId).variantId];
  const forecasts = variantIds.flatMap((variantId, at) => {
    const own = forecastsOf(kitchen, variantId);
    progress?.((at + 1) / variantIds.length);
    return own;
  });
  const held = forecasts.filter((forecast) => forecast.held).length;
  const kinds = [...new Set(forecasts.map((forecast) => forecast.kind))];
  const cards = kitchen.trials
    .filter((trial) => trial.card !== null && variantIds.includes(trial.variantId))
    .map((trial) => followed(kitchen, trial));
  return freezeDeep({
    kind: "forecast record",
    forecasts,
    byKind: kinds.map((kind) => {
      const own = forecasts.filter((forecast) => forecast.kind === kind);
      return { kind, held: own.filter((forecast) => forecast.held).length, made: own.length };
    }),
    held,
    made: forecasts.length,
    cards,
    sentence: sentenceOf(held, forecasts.length, cards),
    units: kitchen.units,
  });
}

function forecastsOf(kitchen: Kitchen, variantId: string): Forecast[] {
  const trials = kitchen.trials.filter((trial) => trial.variantId === variantId);
  const sessionOf = (trial: KitchenTrial): string => `${trial.date} ${trial.session ?? ""}`;
  const sessions = [...new Set(trials.map(sessionOf))].sort();
  return sessions.flatMap((session) => {
    const now = trials.filter((trial) => sessionOf(trial) === session);
    const earlier = trials.filter((trial) => sessionOf(trial) < session);
    if (earlier.length < LEAST_EARLIER) return [];
    const without = trials.filter((trial) => !earlier.includes(trial)).map((trial) => trial.trialId);
    const calibration = windowCalibration({ kitchen, variantId, without });
    return now.flatMap((trial) => forecastsOfTrial(kitchen, trial, calibration, earlier));
  });
}

function forecastsOfTrial(
  kitchen: Kitchen,
  trial: KitchenTrial,
  calibration: CrispCalibration,
  earlier: readonly KitchenTrial[],
): Forecast[] {
  const seen = observationOf(kitchen, trial);
  const setting = settle(
    {
      thicknessMm: seen.thicknessMm,
      sidesMm: seen.sidesMm,
      applianceId: seen.applianceId,
      setpointC: seen.setpointC,
      loadFraction: seen.loadFraction ?? undefined,
      turned: seen.turned,
      startC: seen.startC,
      limit: variantOf(kitchen, trial.variantId).limit,
      units: kitchen.units,
    },
    `forecastRecord: trial ${trial.trialId}`,
  );
  const basis = basisOf(calibration, setting);
  const misfit = misfitAt(calibration, setting, basis.coreError);
  const stock = pieceStock(calibration, { count: DRAWS, seed: 11 });
  const { noise, unevenness } = calibration;
  const runs = Math.hypot(noise.run, noise.session);
  const drawn = piecesOfStock(stock, setting).map((each, at) => {
    const typical = typicalPiece(stock, each, misfit, at);
    const piece = { ...typical, coefficientWm2K: typical.coefficientWm2K * Math.exp(runs * stock.run[at]) };
    return { piece, thicknessMm: seen.thicknessMm + seen.thicknessSeMm * stock.thickness[at], at };
  });
  const { looksMin, timeMin } = seen;
  const kind = kindOf(trial, earlier);
  const forecast = (of: Forecast["of"], values: readonly number[], logged: readonly [number, number]): Forecast => {
    const sorted = Float64Array.from(values).sort();
    const interval90 = [nearestRank(sorted, 0.05), nearestRank(sorted, 0.95)] as const;
    return {
      variantId: trial.variantId,
      trialId: trial.trialId,
      of,
      kind,
      from: earlier.length,
      expected: nearestRank(sorted, 0.5),
      interval90,
      seen: logged,
      held: interval90[0] <= logged[1] && interval90[1] >= logged[0],
    };
  };
  return [
    ...crispForecast(seen, forecast, () =>
      drawn.map(({ piece, thicknessMm, at }) =>
        Math.min(NEVER_MIN, crispMin(basis, piece, thicknessMm) * Math.exp(noise.crispTime * stock.crisp[at])),
      ),
    ),
    ...coreForecast(seen, forecast, (rested) =>
      drawn.map(({ piece, thicknessMm, at }) => {
        const own = { ...piece, coreFactor: piece.coreFactor * Math.exp(PLACE_CORE_SPREAD * stock.core[at]) };
        return (
          coreReadingC(
            basis,
            own,
            probedMm(thicknessMm, unevenness),
            heatedMin(looksMin, timeMin, piece.lookMin),
            rested,
          ) +
          noise.coreK * stock.crisp[at]
        );
      }),
    ),
    ...(seen.lossPercent === null
      ? []
      : [
          forecast(
            "loss (%)",
            drawn.map(({ piece, thicknessMm, at }) => {
              const depthMm = crustMmAt(basis, piece, thicknessMm, heatedMin(looksMin, timeMin));
              return lossPercentOf(basis, piece, thicknessMm, depthMm) + noise.lossPercent * stock.core[at];
            }),
            [seen.lossPercent, seen.lossPercent],
          ),
        ]),
  ];
}

type Make = (of: Forecast["of"], values: readonly number[], logged: readonly [number, number]) => Forecast;

function crispForecast(seen: CrispObservation, make: Make, values: () => readonly number[]): Forecast[] {
  const { notCrispMin, crispMin: firstCrispMin } = seen;
  if (notCrispMin === null && firstCrispMin === null) return [];
  return [make("crisp time (min)", values(), [notCrispMin ?? 0, firstCrispMin ?? Number.POSITIVE_INFINITY])];
}

function coreForecast(seen: CrispObservation, make: Make, values: (rested: boolean) => readonly number[]): Forecast[] {
  if (seen.coreC !== null) return [make("core (°C)", values(false), [seen.coreC, seen.coreC])];
  return seen.restedCoreC === null ? [] : [make("core (°C)", values(true), [seen.restedCoreC, seen.restedCoreC])];
}

/** What a trial changed against all earlier ones: the first of these that holds. */
function kindOf(trial: KitchenTrial, earlier: readonly KitchenTrial[]): ForecastKind {
  const near = (of: (each: KitchenTrial) => boolean): boolean => earlier.some(of);
  if (!near((each) => each.applianceId === trial.applianceId)) return "another appliance";
  if (!near((each) => Math.abs(each.setpointC - trial.setpointC) <= 3)) return "another setpoint";
  if (!near((each) => Math.abs(Math.log(each.thicknessMm / trial.thicknessMm)) <= 0.08)) return "another thickness";
  if (!near((each) => Math.abs((each.loadFraction ?? LOOSE_LOAD) - (trial.loadFraction ?? LOOSE_LOAD)) <= 0.15))
    return "another load";
  return "the same setting";
}

function followed(kitchen: Kitchen, trial: KitchenTrial): CardFollowed {
  if (trial.card === null) fail("forecastRecord: card", "must be named", trial.trialId);
  const core = trial.restedCoreC ?? trial.coreC;
  const { limitC } = variantOf(kitchen, trial.variantId).limit;
  return {
    trialId: trial.trialId,
    card: trial.card,
    safe: core === null ? null : core >= limitC,
    crisp: trial.crispMin !== null ? true : trial.notCrispMin !== null ? false : null,
  };
}

function sentenceOf(held: number, made: number, cards: readonly CardFollowed[]): string {
  const own =
    made === 0
      ? "No trial could be forecast yet: it takes two sessions, with three trials in the first."
      : `Of ${made} forecasts at 90 %, ${held} held (${Math.round((100 * held) / made)} %).`;
  if (cards.length === 0) return own;
  const read = cards.filter((card) => card.safe !== null);
  const looked = cards.filter((card) => card.crisp !== null);
  return `${own} Cards followed ${cards.length} times: core at its limit in ${read.filter((card) => card.safe).length} of ${read.length} read, crisp in ${looked.filter((card) => card.crisp).length} of ${looked.length} looked at.`;
}
