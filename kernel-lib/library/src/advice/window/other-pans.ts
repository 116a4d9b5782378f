import { freezeDeep } from "../../check/freeze-deep";
import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import { largestThickness } from "../../crisp/window/largest-thickness";
import type { Standing } from "../../crisp/window/misfit-at";
import { chanceOf } from "../../crisp/window/window-words";
import { heldText } from "../../pan/held-text";
import type { Pan } from "../../pan/pan";
import { slabMassG } from "../../pan/slab-mass";
import { slabThickness } from "../../pan/slab-thickness";
import type { CoreLimit } from "../../safety/core-limit";
import type { KitchenVariant } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import { ownLengthText } from "../../units/length-text";
import { ownMassText } from "../../units/mass-text";
import { roundToScale } from "../../units/round-to-scale";
import { SETPOINT_STEP_K } from "../../units/setpoint-step";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { type CrispWindowOptions, crispWindow, type KitchenWindow } from "./crisp-window";
import { isGood, judgeWindow, type WindowAdvice } from "./judge-window";
import { windowCalibration } from "./window-calibration";

/** What `otherPans` works from: a setting for `crispWindow`, without a pan or a thickness. */
export interface OtherPansOptions extends Omit<CrispWindowOptions, "panId" | "thicknessMm"> {
  /** pans to look at; default: all of the kitchen, in its order */
  readonly panIds?: readonly string[];
}

/** One thing to change, and what it would do. */
export interface Remedy {
  readonly change:
    | "reduce the batch"
    | "raise the batch"
    | "split over pans"
    | "cut smaller"
    | "lower setpoint, longer"
    | "less load"
    | "turn";
  /** in words, with the predicted effect */
  readonly sentence: string;
  /** chance of success at its card time [-] */
  readonly success: number;
  readonly cardMin: number;
  /** whether the card time is longer than accepted */
  readonly late: boolean;
  /** whether it was tried; outside of that no chance is told */
  readonly standing: Standing;
}

/** What comes of the batch on one pan. */
export interface PanVerdict {
  readonly panId: string;
  readonly panName: string;
  readonly advice: WindowAdvice | "does not fit" | "other kind of pan";
  /** in words */
  readonly verdict: string;
  /** null when the batch does not go on this pan */
  readonly window: KitchenWindow | null;
  /** in the order to try them; empty when nothing need change, or no change promises success */
  readonly remedies: readonly Remedy[];
}

/** The same batch on every pan of the kitchen. */
export interface OtherPans {
  readonly kind: "other pans";
  readonly variantId: string;
  readonly batchG: number;
  readonly applianceId: string;
  readonly setpointC: number;
  /** the kitchen's own */
  readonly units: KitchenUnits;
  readonly limit: CoreLimit;
  readonly pans: readonly PanVerdict[];
}

const MOST_PANS = 12;
/** A change with less of a chance than this promises nothing [-]; our judgement. */
const LEAST_PROMISE = 0.05;
/** Pieces drawn for the window of a remedy, which is only one of several to choose from. */
const REMEDY_DRAWS = 400;

/**
 * Puts a variant's batch on every pan of the kitchen: slab thickness, crisp window, verdict, and what to change, in
 * order: reduce the batch, split it, cut smaller, lower setpoint and longer, less load, turn; each with the effect that
 * the calibrated clocks predict. A change that leaves
 * the window shut or succeeds in less than one of twenty is left out; where all do, the verdict says so.
 *
 * Verdicts are those of `judgeWindow`.
 *
 * @example
 * const pans = otherPans({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * pans.pans.find((pan) => pan.panId === "half-sheet")?.advice; // → "keep"
 * pans.pans.find((pan) => pan.panId === "eighth-sheet")?.advice; // → "does not fit"
 */
export function otherPans(options: OtherPansOptions): OtherPans {
  const { kitchen, panIds, ...given } = options;
  const variant = variantOf(kitchen, options.variantId);
  const calibration = options.calibration ?? windowCalibration({ kitchen, variantId: variant.variantId });
  const common = { kitchen, ...given, calibration, batchG: options.batchG ?? variant.batchG };
  const pans = panIds === undefined ? kitchen.pans : panIds.map((panId) => panOf(kitchen, panId));
  return freezeDeep({
    kind: "other pans",
    variantId: variant.variantId,
    batchG: common.batchG,
    applianceId: options.applianceId ?? variant.applianceId,
    setpointC: options.setpointC ?? variant.setpointC,
    units: kitchen.units,
    limit: variant.limit,
    pans: pans.map((pan) => onPan(common, variant, pan)),
  });
}

type Common = Omit<OtherPansOptions, "panIds"> & { readonly calibration: CrispCalibration; readonly batchG: number };

function onPan(common: Common, variant: KitchenVariant, pan: Pan): PanVerdict {
  const named = { panId: pan.id, panName: pan.name };
  if ((variant.form === "batter") !== (pan.shape === "wells")) {
    const verdict = variant.form === "batter" ? "a batter: bake it in wells" : "a slab to cut: spread it on a sheet";
    return { ...named, advice: "other kind of pan", verdict, window: null, remedies: [] };
  }
  const brimG = Math.floor(slabMassG({ pan, thicknessMm: pan.depthMm, densityKgM3: variant.densityKgM3 }));
  const trying = { draws: REMEDY_DRAWS, ...common };
  if (common.batchG > brimG) {
    const verdict = `does not fit: it holds ${heldText(brimG, common.kitchen.units)}`;
    const tried = [...reduced(trying, variant, pan), ...splitOver(trying, pan)];
    return { ...named, advice: "does not fit", window: null, ...promising(verdict, tried) };
  }
  const window = crispWindow({ ...common, panId: pan.id });
  const { advice, verdict } = judgeWindow(window);
  const tried =
    advice === "keep" || advice === "on the edge" || advice === "outside what was tried"
      ? []
      : remediesFor(trying, variant, pan, window, advice);
  return { ...named, advice, window, ...promising(verdict, tried) };
}

/** A change as it was worked through, and whether it leaves a typical piece an open window. */
interface Tried {
  readonly remedy: Remedy;
  readonly open: boolean;
}

/** The changes that promise something; where none does, the verdict says so once. */
function promising(verdict: string, tried: readonly Tried[]): Pick<PanVerdict, "verdict" | "remedies"> {
  const remedies = tried
    .filter(
      ({ open, remedy }) => open && (remedy.standing === "outside what was tried" || remedy.success >= LEAST_PROMISE),
    )
    .map(({ remedy }) => remedy);
  if (remedies.length > 0 || tried.length === 0) return { verdict, remedies };
  const names = [...new Set(tried.map(({ remedy }) => remedy.change))].join("; ");
  return { verdict: `${verdict}; no change that was tried promises success (${names})`, remedies };
}

function remediesFor(
  common: Common,
  variant: KitchenVariant,
  pan: Pan,
  window: KitchenWindow,
  advice: PanVerdict["advice"],
): Tried[] {
  if (advice === "too thin") return raised(common, variant, pan);
  const { setting } = window;
  const remedies: Tried[] = [
    ...reduced(common, variant, pan),
    ...splitOver(common, pan),
    ...cutSmaller(common, pan, window),
  ];
  const tryOut = (change: Remedy["change"], what: string, changed: Partial<CrispWindowOptions>): void => {
    const tried = crispWindow({ ...common, panId: pan.id, ...changed });
    remedies.push(remedyOf(change, what, tried));
  };
  const stepK = SETPOINT_STEP_K[setting.units];
  for (const lowerK of [stepK, 2 * stepK])
    if (setting.setpointC - lowerK >= 160)
      tryOut("lower setpoint, longer", `set ${ownSettingText(setting.setpointC - lowerK, setting.units)}`, {
        setpointC: setting.setpointC - lowerK,
      });
  if (setting.loadFraction > LOOSE_LOAD + 0.02)
    tryOut("less load", `load ${LOOSE_LOAD} of the floor instead of ${setting.loadFraction.toFixed(2)}`, {
      loadFraction: LOOSE_LOAD,
    });
  if (!setting.turned) tryOut("turn", "turn the pieces past half-way", { turned: true });
  return remedies;
}

function remedyOf(change: Remedy["change"], what: string, window: KitchenWindow): Tried {
  const { recommended, setting, open, standing } = window;
  const late = recommended.cardMin > setting.longestMin;
  const effect = `card ${recommended.cardMin} min${late ? `, past the ${setting.longestMin} min accepted` : ""}, ${chanceOf(window)}`;
  const remedy = {
    change,
    sentence: `${what}, ${thicknessWords(setting.thicknessMm, setting.units)} thick: ${effect}`,
    success: recommended.success,
    cardMin: recommended.cardMin,
    late,
    standing,
  };
  return { remedy, open };
}

/** The largest batch that is kept, in steps of 3 % from the lower end of the largest thickness's interval. */
function reduced(common: Common, variant: KitchenVariant, pan: Pan): Tried[] {
  const own = panOf(common.kitchen, variant.panId);
  const brimG = slabMassG({ pan: own, thicknessMm: own.depthMm, densityKgM3: variant.densityKgM3 });
  const fitting = Math.min(common.batchG, Math.floor(brimG));
  const probe = crispWindow({ ...common, batchG: fitting, thicknessMm: 10, draws: 100 });
  const { interval95 } = largestThickness({ ...probe.setting, calibration: common.calibration });
  let thicknessMm = Math.min(interval95[0], 0.95 * pan.depthMm);
  for (let step = 0; step < 10 && thicknessMm >= 2; step++, thicknessMm *= 0.97) {
    const exactG = slabMassG({ pan, thicknessMm, densityKgM3: variant.densityKgM3 });
    const batchG = roundToScale(exactG, common.kitchen.units, "down");
    if (batchG <= 0 || batchG >= common.batchG) continue;
    const window = crispWindow({ ...common, panId: pan.id, batchG });
    if (isGood(window))
      return [remedyOf("reduce the batch", `reduce the batch to ${ownMassText(batchG, common.kitchen.units)}`, window)];
  }
  return [];
}

/** The batch that gives this pan the thickness the variant was tuned at. */
function raised(common: Common, variant: KitchenVariant, pan: Pan): Tried[] {
  const { densityKgM3 } = variant;
  const tuned = slabThickness({ pan: panOf(common.kitchen, variant.panId), batchG: variant.batchG, densityKgM3 });
  if (tuned.thicknessMm > pan.depthMm) return [];
  const exactG = slabMassG({ pan, thicknessMm: tuned.thicknessMm, densityKgM3 });
  const batchG = roundToScale(exactG, common.kitchen.units, "up");
  if (batchG <= common.batchG || batchG > slabMassG({ pan, thicknessMm: pan.depthMm, densityKgM3 })) return [];
  const what = `raise the batch to ${ownMassText(batchG, common.kitchen.units)}`;
  return [remedyOf("raise the batch", what, crispWindow({ ...common, panId: pan.id, batchG }))];
}

function splitOver(common: Common, pan: Pan): Tried[] {
  const { densityKgM3 } = variantOf(common.kitchen, common.variantId);
  const brimG = slabMassG({ pan, thicknessMm: pan.depthMm, densityKgM3 });
  let last: Tried | null = null;
  for (let pans = 2; pans <= MOST_PANS; pans++) {
    const batchG = common.batchG / pans;
    if (batchG > brimG) continue;
    if (slabThickness({ pan, batchG, densityKgM3 }).thicknessMm < 3) break;
    const window = crispWindow({ ...common, panId: pan.id, batchG });
    const short = pans > pan.count ? `, the kitchen has ${pan.count}` : "";
    const remedy = remedyOf("split over pans", `split over ${pans} ${pan.name}s${short}`, window);
    if (isGood(window)) return [remedy];
    // more pans than there are are worth a word only where they help
    if (pans <= pan.count) last = remedy;
  }
  return last === null ? [] : [last];
}

/** Smaller pieces heat, dry and brown from their edges too. */
function cutSmaller(common: Common, pan: Pan, window: KitchenWindow): Tried[] {
  if (window.waitsFor !== "core" || pan.shape === "wells") return [];
  const [lengthMm, widthMm] = window.setting.sidesMm as readonly [number, number];
  const piece = { lengthMm: lengthMm / 2, widthMm };
  const halved = crispWindow({ ...common, panId: pan.id, piece });
  const percent = Math.round(100 * (1 - halved.core.min / window.core.min));
  const sooner = percent >= 1 ? `, whose core is hot some ${percent} % sooner` : "";
  const what = `cut pieces of ${ownLengthText([piece.lengthMm, piece.widthMm], window.setting.units)}${sooner}`;
  return [remedyOf("cut smaller", what, halved)];
}
