import { positive, within } from "../../check/check";
import { type CoreLimit, coreLimit } from "../../safety/core-limit";
import type { KitchenUnits } from "../../units/unit-table";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { brownDryingMin, browningTableOf } from "../clocks/browning-clock";
import type { BrowningTable } from "../clocks/browning-table";
import { type ClockBasis, clockBasis } from "../clocks/clock-basis";
import { coreMin } from "../clocks/core-clock";
import { crustDryingMin, crustPace, crustStartMin, dryDryingMin } from "../clocks/crust-clock";
import { airAtLoadC, LOOSE_LOAD } from "../clocks/load-effect";
import { browningFor } from "../clocks/panel-score";
import type { PieceConstants } from "../clocks/piece-constants";

/** One setting: which slab, in what, how hot, and what counts as done and as overdone. */
export interface WindowSetting {
  readonly thicknessMm: number;
  /** lateral sides of a piece (mm), the diameter twice for a round one; default `null`: an uncut slab */
  readonly sidesMm?: readonly [number, number] | null;
  readonly applianceId: string;
  /** air temperature set (°C) */
  readonly setpointC: number;
  /** share of the floor that the pieces cover, 0 to 1.2; default 0.6, a loose single layer */
  readonly loadFraction?: number;
  /** turned past half-way; default false */
  readonly turned?: boolean;
  /** pieces that go in together; a safe time is one for all of them. Default 12 */
  readonly piecesPerLoad?: number;
  /** pieces when they go in (°C); default −18 */
  readonly startC?: number;
  /** what the core must reach; default 74 °C / 165 °F */
  readonly limit?: CoreLimit;
  /** browning score that is too dark, 0 to 9; default 7, our judgement */
  readonly tooBrownScore?: number;
  /** mass lost that is too dry (%); default 25, our judgement */
  readonly tooDryPercent?: number;
  /** longest time the developer accepts (min); default 30 */
  readonly longestMin?: number;
  /** units of the sentences; default metric */
  readonly units?: KitchenUnits;
}

/** A setting with its defaults filled in and checked. */
export type SettledSetting = Required<WindowSetting>;

/** Browning score that is too dark, 0 to 9, unless a setting says otherwise; our judgement. */
export const TOO_BROWN_SCORE = 7;
/** Mass lost that is too dry unless a setting says otherwise (%); our judgement. */
export const TOO_DRY_PERCENT = 25;
/** What a setting has unless it says otherwise. */
const USUAL: Omit<SettledSetting, "thicknessMm" | "applianceId" | "setpointC"> = {
  sidesMm: null,
  loadFraction: LOOSE_LOAD,
  piecesPerLoad: 12,
  turned: false,
  startC: -18,
  limit: coreLimit(),
  tooBrownScore: TOO_BROWN_SCORE,
  tooDryPercent: TOO_DRY_PERCENT,
  longestMin: 30,
  units: "metric",
};

/** The largest floor of a kitchen covered with the smallest pieces, 2 m² and more of 3 mm squares. */
const MOST_PIECES = 300_000;

/** Fills in and checks a setting; what is undefined counts as left out. */
export function settle(setting: WindowSetting, where: string): SettledSetting {
  const given = Object.entries(setting).filter(([, value]) => value !== undefined);
  const settled: SettledSetting = { ...USUAL, ...(Object.fromEntries(given) as typeof setting) } as SettledSetting;
  within(settled.thicknessMm, 1, 60, `${where}: thicknessMm`, "mm");
  for (const side of settled.sidesMm ?? []) within(side, 3, 1000, `${where}: sidesMm`, "mm");
  within(settled.piecesPerLoad, 1, MOST_PIECES, `${where}: piecesPerLoad`, "");
  within(settled.setpointC, 130, 290, `${where}: setpointC`, "°C");
  within(settled.loadFraction, 0, 1.2, `${where}: loadFraction`, "");
  within(settled.startC, -40, 40, `${where}: startC`, "°C");
  within(settled.tooBrownScore, 0.5, 8.9, `${where}: tooBrownScore`, "");
  within(settled.tooDryPercent, 1, 80, `${where}: tooDryPercent`, "%");
  positive(settled.longestMin, `${where}: longestMin`, "min");
  return Object.freeze(settled);
}

/** The clock basis of a setting. */
export function basisOf(calibration: CrispCalibration, setting: SettledSetting): ClockBasis {
  return clockBasis({
    food: calibration.food,
    startC: setting.startC,
    airC: airAtLoadC(setting.setpointC, setting.loadFraction),
    limitC: setting.limit.limitC,
  });
}

/** A core that never reaches its limit counts as reaching it after a week (min). */
export const NEVER_MIN = 1e4;

/** The four moments of one piece (min). */
export interface PieceMoments {
  /** core at its limit, held as long as the limit asks */
  readonly coreMin: number;
  readonly crispMin: number;
  readonly brownMin: number;
  readonly dryMin: number;
}

/** When the core of one piece is at its limit and has been held there as long as that asks (min). */
export function safeCoreMin(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  setting: SettledSetting,
): number {
  return Math.min(NEVER_MIN, coreMin(basis, piece, thicknessMm) + setting.limit.holdS / 60);
}

/** When one piece is safe, crisp, too brown and too dry; one that is dry through before it is crisp is never crisp. */
export function momentsOf(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  setting: SettledSetting,
  table: BrowningTable = browningTableOf(basis, piece),
): PieceMoments {
  const pace = crustPace(piece, thicknessMm);
  const startMin = crustStartMin(basis, piece, thicknessMm);
  const tooBrown = browningFor(setting.tooBrownScore, piece.brownSteepness);
  return {
    coreMin: safeCoreMin(basis, piece, thicknessMm, setting),
    crispMin:
      piece.crustMm > thicknessMm / 2
        ? Number.POSITIVE_INFINITY
        : pace * (startMin + crustDryingMin(basis, piece, piece.crustMm)),
    brownMin: pace * (startMin + brownDryingMin(basis, piece, thicknessMm, tooBrown, table)),
    dryMin: Math.max(0, pace * (startMin + dryDryingMin(basis, piece, thicknessMm, setting.tooDryPercent))),
  };
}
