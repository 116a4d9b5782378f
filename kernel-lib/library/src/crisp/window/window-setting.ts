import { positive, within } from "../../check/check";
import { type CoreLimit, coreLimit } from "../../safety/core-limit";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { airAtLoadC } from "../clocks/load-effect";
import { browningFor } from "../clocks/panel-score";
import {
  brownDryingMin,
  type ClockBasis,
  clockBasis,
  coreMin,
  crustDryingMin,
  crustStartMin,
  dryDryingMin,
  type SlabConstants,
} from "../clocks/slab-clocks";

/** One setting: which slab, in what, how hot, and what counts as done and as overdone. */
export interface WindowSetting {
  readonly thicknessMm: number;
  readonly applianceId: string;
  /** air temperature set (°C) */
  readonly setpointC: number;
  /** share of the floor that the pieces cover, 0 to 1.2; default 0.6, a loose single layer */
  readonly loadFraction?: number;
  /** turned past half-way; default false */
  readonly turned?: boolean;
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
}

/** A setting with its defaults filled in and checked. */
export type SettledSetting = Required<WindowSetting>;

/** Fills in and checks a setting. */
export function settle(setting: WindowSetting, where: string): SettledSetting {
  const settled: SettledSetting = {
    loadFraction: 0.6,
    turned: false,
    startC: -18,
    limit: coreLimit(),
    tooBrownScore: 7,
    tooDryPercent: 25,
    longestMin: 30,
    ...setting,
  };
  within(settled.thicknessMm, 1, 60, `${where}: thicknessMm`, "mm");
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

/** The four moments of one slab (min). */
export interface SlabMoments {
  /** core at its limit, held as long as the limit asks */
  readonly coreMin: number;
  readonly crispMin: number;
  readonly brownMin: number;
  readonly dryMin: number;
}

/** Minutes of drying to crisp and to too brown: the same for every thickness, so a map works them out once. */
export interface DryingTimes {
  readonly crispMin: number;
  readonly brownMin: number;
}

/** Minutes of drying of one slab to crisp and to too brown. */
export function dryingTimesOf(basis: ClockBasis, slab: SlabConstants, setting: SettledSetting): DryingTimes {
  return {
    crispMin: crustDryingMin(basis, slab, slab.crustMm),
    brownMin: brownDryingMin(basis, slab, browningFor(setting.tooBrownScore)),
  };
}

/** When one slab is safe, crisp, too brown and too dry; one that is dry through before it is crisp is never crisp. */
export function momentsOf(
  basis: ClockBasis,
  slab: SlabConstants,
  thicknessMm: number,
  setting: SettledSetting,
  drying: DryingTimes = dryingTimesOf(basis, slab, setting),
): SlabMoments {
  const startMin = crustStartMin(basis, slab, thicknessMm);
  return {
    coreMin: coreMin(basis, slab, thicknessMm) + setting.limit.holdS / 60,
    crispMin: slab.crustMm > thicknessMm / 2 ? Number.POSITIVE_INFINITY : startMin + drying.crispMin,
    brownMin: startMin + drying.brownMin,
    dryMin: Math.max(0, startMin + dryDryingMin(basis, slab, thicknessMm, setting.tooDryPercent)),
  };
}
