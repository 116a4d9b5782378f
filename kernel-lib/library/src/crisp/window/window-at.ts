import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { CoreLimit } from "../../safety/core-limit";
import { limitText } from "../../safety/limit-text";
import { largestOf } from "../../statistics/extremes";
import { nearestRank } from "../../statistics/nearest-rank";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { browningTableOf } from "../clocks/browning-clock";
import { coreAtC } from "../clocks/core-clock";
import { crustMmAt, lossPercentOf } from "../clocks/crust-clock";
import type { PieceConstants } from "../clocks/piece-constants";
import { type CardTime, cardTime } from "./card-time";
import { modePiece } from "./draw-pieces";
import { type Misfit, misfitAt, type Standing, standingOf } from "./misfit-at";
import {
  drawnPieces,
  pieceStock,
  piecesAt,
  type SuccessOverTime,
  successOverTime,
  typicalPiece,
} from "./success-over-time";
import {
  basisOf,
  momentsOf,
  type PieceMoments,
  type SettledSetting,
  settle,
  type WindowSetting,
} from "./window-setting";
import { chanceOf, loadSafeText, minutesText, sizeText } from "./window-words";

/** A moment with its doubt; Infinity when it never comes. */
export interface Moment {
  readonly min: number;
  /** from what the trials leave uncertain, for a piece of nominal thickness */
  readonly interval95: readonly [number, number];
}

/** The time to print, how often it will do, and what comes of it. */
export interface RecommendedTime extends CardTime {
  /** most probable core at the card time (°C) */
  readonly coreC: number;
  /** most probable loss at the card time (% of the mass) */
  readonly lossPercent: number;
  /** standard error of that loss, of the typical piece (% points) */
  readonly lossSdPercent: number;
}

/** When a slab is safe and crisp and not yet overdone, at one setting. */
export interface CrispWindow {
  readonly kind: "crisp window";
  readonly setting: SettledSetting;
  readonly core: Moment;
  readonly crisp: Moment;
  readonly brown: Moment;
  readonly dry: Moment;
  /** max of core and crisp */
  readonly opens: Moment;
  /** min of brown and dry */
  readonly closes: Moment;
  readonly open: boolean;
  /** chance that the window is open at all for a piece of nominal thickness [-] */
  readonly openChance: number;
  readonly waitsFor: "core" | "crust";
  readonly closedBy: "browning" | "drying";
  /** thickness at which opening and closing meet, the nearest (mm); null when they do not between 2 and 40 mm */
  readonly meetsAtMm: number | null;
  readonly recommended: RecommendedTime;
  readonly chances: SuccessOverTime;
  /** what the clocks may miss here, growing with the distance from the trials */
  readonly misfit: Misfit;
  /** outside what was tried a chance is a guess that nobody should print */
  readonly standing: Standing;
  /** what lies outside the trials; empty when nothing does */
  readonly extrapolation: readonly string[];
  /** a calibration that did not converge; empty when all is well */
  readonly doubts: readonly string[];
  readonly limit: CoreLimit;
  /** the window in one sentence, with its numbers */
  readonly sentence: string;
}

/** Choices of `windowAt`. */
export interface WindowAtOptions extends WindowSetting {
  readonly calibration: CrispCalibration;
  /** pieces drawn for the chances; default 2000 */
  readonly draws?: number;
  /** default 1 */
  readonly seed?: number;
}

/**
 * The crisp window of a slab at one setting: it opens when the core is safe and the crust deep enough, and closes when
 * the piece is too brown or too dry; with the chance of success over time and the time to print.
 *
 * opens = max(t_core, t_crisp); closes = min(t_brown, t_dry). The recommended time has the greatest chance that a piece
 * is safe, crisp and not overdone, among the times from which all pieces of 99 of 100 loads are safe with 98 % confidence
 * (and within the accepted time when that has a chance of 0.9); the card's time is that, rounded up to half a minute (a
 * quarter or a tenth where half would cost more than two points). The chance counts what the trials leave uncertain, what
 * the clocks may miss here (`misfitAt`), the slab's unevenness and the scatter of sessions, runs, places and pieces.
 *
 * @returns moments with intervals, recommended time, chances over time, what is extrapolated, limit and caution
 *
 * Range: as `calibrateCrisp`; pieces with `sidesMm` heat, dry and brown from their edges too (`edgeSpeed`).
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const calibration = calibrateCrisp({ food, observations: [], applianceIds: ["basket"] });
 * const window = windowAt({ calibration, thicknessMm: 9, applianceId: "basket", setpointC: 200 });
 * window.core.min; // → 9.21
 * window.crisp.min; // → 14.7
 * window.waitsFor; // → "crust"
 * windowAt({ calibration, thicknessMm: 9, applianceId: "basket", setpointC: 60 }); // throws "setpointC must be between 130 and 290 °C, got 60"
 */
export function windowAt(options: WindowAtOptions): CrispWindow {
  const { calibration, draws = 2000, seed = 1, ...rest } = options;
  if (!(Number.isInteger(draws) && draws >= 100)) fail("windowAt: draws", "must be a whole number >= 100", draws);
  const setting = settle(rest, "windowAt");
  const basis = basisOf(calibration, setting);
  const piece = modePiece(calibration, setting);
  const table = browningTableOf(basis, piece);
  const at = momentsOf(basis, piece, setting.thicknessMm, setting, table);
  const misfit = misfitAt(calibration, setting, basis.coreError);
  const stock = pieceStock(calibration, { count: draws, seed });
  const withTables = drawnPieces(stock, setting, basis);
  const drawn = withTables.map(({ piece: each }) => each);
  const nominal = drawn.map((each, place) =>
    momentsOf(basis, typicalPiece(stock, each, misfit, place), setting.thicknessMm, setting, withTables[place].table),
  );
  const moment = (of: (moments: PieceMoments) => number): Moment => ({
    min: of(at),
    interval95: middle95(nominal.map(of)),
  });
  const opensOf = ({ coreMin, crispMin }: PieceMoments): number => Math.max(coreMin, crispMin);
  const closesOf = ({ brownMin, dryMin }: PieceMoments): number => Math.min(brownMin, dryMin);
  const opens = moment(opensOf);
  const closes = moment(closesOf);

  const pieces = piecesAt(stock, basis, setting, misfit, withTables);
  const latest = 1.3 * Math.max(largestOf([opens.min, closes.min, at.coreMin].filter((min) => min < 120)), 5);
  const stepMin = latest / 240;
  const chances = successOverTime(
    pieces,
    Array.from({ length: 241 }, (_, step) => step * stepMin),
  );
  const card = cardTime({ pieces, chances, longestMin: setting.longestMin });
  const lossOf = (each: PieceConstants): number =>
    lossPercentOf(basis, each, setting.thicknessMm, crustMmAt(basis, each, setting.thicknessMm, card.cardMin));
  const open = opens.min <= closes.min;
  const meets = meetsAtMm((mm) => {
    const moments = momentsOf(basis, piece, mm, setting, table);
    return closesOf(moments) - opensOf(moments);
  }, setting.thicknessMm);
  const losses = drawn.map((each, place) => lossOf(typicalPiece(stock, each, misfit, place)));
  const result = {
    kind: "crisp window" as const,
    setting,
    core: moment((moments) => moments.coreMin),
    crisp: moment((moments) => moments.crispMin),
    brown: moment((moments) => moments.brownMin),
    dry: moment((moments) => moments.dryMin),
    opens,
    closes,
    open,
    openChance: nominal.filter((moments) => opensOf(moments) <= closesOf(moments)).length / nominal.length,
    waitsFor: at.coreMin > at.crispMin ? ("core" as const) : ("crust" as const),
    closedBy: at.brownMin < at.dryMin ? ("browning" as const) : ("drying" as const),
    meetsAtMm: meets,
    recommended: {
      ...card,
      coreC: coreAtC(basis, piece, setting.thicknessMm, card.cardMin),
      lossPercent: lossOf(piece),
      lossSdPercent: sdOf(losses),
    },
    chances,
    misfit,
    standing: standingOf(misfit),
    extrapolation: misfit.outside,
    doubts: doubtsOf(calibration),
    limit: setting.limit,
  };
  return freezeDeep({ ...result, sentence: sentenceOf(result) });
}

function sdOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}

function middle95(values: readonly number[]): readonly [number, number] {
  const sorted = Float64Array.from(values).sort();
  return [nearestRank(sorted, 0.025), nearestRank(sorted, 0.975)];
}

/** The thickness nearest to `from` at which the window's width passes zero, by steps of 0.5 mm and then halving. */
function meetsAtMm(width: (thicknessMm: number) => number, from: number): number | null {
  const crossing = (step: number): number | null => {
    for (let mm = from; mm + step >= 2 && mm + step <= 40; mm += step) {
      if (width(mm) >= 0 === width(mm + step) >= 0) continue;
      let [near, far] = [mm, mm + step];
      for (let halving = 0; halving < 30; halving++) {
        const middle = (near + far) / 2;
        if (width(middle) >= 0 === width(near) >= 0) near = middle;
        else far = middle;
      }
      return (near + far) / 2;
    }
    return null;
  };
  const up = crossing(0.5);
  const down = crossing(-0.5);
  if (up === null || down === null) return up ?? down;
  return up - from <= from - down ? up : down;
}

function doubtsOf(calibration: CrispCalibration): string[] {
  return calibration.converged ? [] : [`the calibration did not converge (${calibration.reason})`];
}

function sentenceOf(window: Omit<CrispWindow, "sentence">): string {
  const { setting, opens, closes, core, chances, recommended, limit } = window;
  const range = ({ min, interval95: [low, high] }: Moment): string =>
    `${minutesText(min)} (${minutesText(low)} to ${minutesText(high)})`;
  const where = `${sizeText(setting)} in ${setting.applianceId} at ${ownSettingText(setting.setpointC, setting.units)}`;
  const safe = `a typical core is at ${limitText(limit, setting.units)} by ${range(core)} min, ${loadSafeText(chances.safeFromMin)}`;
  const moments = `opens ${range(opens)}, closes ${range(closes)} min; ${safe}`;
  const chance = chanceOf(window);
  if (window.open) return `${where}: ${moments}. Card: ${recommended.cardMin} min, ${chance}.`;
  const opener = window.waitsFor === "core" ? "a typical core is at its limit" : "the crust is deep enough";
  const closer = window.closedBy === "browning" ? "too brown" : "too dry";
  const meets = window.meetsAtMm === null ? "" : ` The two meet at ${thicknessWords(window.meetsAtMm, setting.units)}.`;
  return `${where}: closed. It is ${closer} at ${minutesText(closes.min)} min, before ${opener} at ${minutesText(opens.min)} min; ${moments}.${meets} The best safe time is ${recommended.cardMin} min, ${chance}.`;
}
