import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import { formulaTotals } from "../../food/formula/formula-totals";
import { type PieceMacros, pieceMacros } from "../../macros/piece-macros";
import type { Pan } from "../../pan/pan";
import type { Slab } from "../../pan/slab-thickness";
import type { CoreLimit } from "../../safety/core-limit";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import type { BatchOnPan } from "../../trials/pieces/batch-on-pan";
import type { PiecesOnPan } from "../../trials/pieces/pieces-on-pan";
import type { KitchenUnits } from "../../units/unit-table";
import { type CrispWitness, crispCurve, crispWitness } from "../curve/crisp-witness";
import type { VariantCrispTime, VariantCrispTimeOptions } from "../curve/variant-crisp-time";
import { crispWindow, type KitchenWindow } from "./crisp-window";
import { judgeWindow } from "./judge-window";
import { otherPans, type PanVerdict, type Remedy } from "./other-pans";
import { windowCalibration } from "./window-calibration";

/** What `decide` works from. */
export interface DecideOptions {
  /** from `loadKitchen` */
  readonly kitchen: Kitchen;
}

/** One variant's whole batch on one pan of the kitchen: what comes of it, how sure, and what to do. */
export interface Decision {
  readonly variantId: string;
  readonly variantName: string;
  readonly panId: string;
  readonly panName: string;
  readonly advice: PanVerdict["advice"];
  /** the advice in words */
  readonly reason: string;
  /** the same with the first thing to change */
  readonly verdict: string;
  /** what could be changed, in the order to try it; empty when nothing need change */
  readonly remedies: readonly Remedy[];
  readonly setpointC: number;
  readonly applianceId: string;
  /** the kitchen's own */
  readonly units: KitchenUnits;
  /** stands beside every time */
  readonly core: CoreLimit;
  /** thicknesses that were tried (mm); null without trials */
  readonly triedMm: readonly [number, number] | null;
  /** `null` when the batch does not go on this pan */
  readonly outcome: Outcome | null;
}

/** What comes of the batch, when it goes on the pan. */
export interface Outcome {
  readonly slab: Slab;
  readonly pieces: PiecesOnPan;
  readonly window: KitchenWindow;
  /** what the plain curve through the log says beside it */
  readonly witness: CrispWitness;
  /** time from which all pieces of 99 of 100 loads are at the limit (min) */
  readonly coreSafeMin: number;
  /** the time of the card (min): never before the core is safe */
  readonly reheatMin: number;
  /** mass after on mass before at that time (%) */
  readonly reheatYield: { readonly yieldPercent: number; readonly standardErrorPercent: number };
  /** of one coated piece as eaten */
  readonly macros: PieceMacros;
}

/**
 * Goes through every variant and every pan of a kitchen with the variant's whole batch: slab thickness, cut, pieces, the
 * crisp window on the variant's own appliance and setpoint, yield and macros at the card's time, and a verdict.
 *
 * The window decides, here as everywhere (`otherPans`, `judgeWindow`); the curve through the crisp times stands beside it
 * as a witness. Core times are calculated, no measurement: probe the thickest piece. `reheatMin` is never before the core
 * is safe.
 *
 * @example
 * decide({ kitchen: loadKitchen() }).length; // → 30
 */
export function decide({ kitchen }: DecideOptions): readonly Decision[] {
  const panIds = kitchen.pans.map((pan) => pan.id);
  return Object.freeze(kitchen.variants.flatMap(({ variantId }) => decideOnPans({ kitchen, variantId }, panIds)));
}

/** The decisions on one variant on some pans, as `decide` makes them. */
export function decideOnPans(options: VariantCrispTimeOptions, panIds: readonly string[]): readonly Decision[] {
  const { kitchen, variantId } = options;
  const calibration = windowCalibration(options);
  const known = { kitchen, variant: variantOf(kitchen, variantId), calibration, curve: crispCurve(options) };
  const { pans } = otherPans({ kitchen, variantId, calibration, panIds });
  return pans.map((verdict) => decisionOf(known, panOf(kitchen, verdict.panId), verdict));
}

/** The decision on a variant's own pan alone, without looking for anything to change. */
export function decideOwnPan({ kitchen, variantId }: VariantCrispTimeOptions): Decision {
  const variant = variantOf(kitchen, variantId);
  const pan = panOf(kitchen, variant.panId);
  const calibration = windowCalibration({ kitchen, variantId });
  const window = crispWindow({ kitchen, variantId, calibration });
  const known = { kitchen, variant, calibration, curve: crispCurve({ kitchen, variantId }) };
  return decisionOf(known, pan, { panId: pan.id, panName: pan.name, ...judgeWindow(window), window, remedies: [] });
}

/** A variant with what its trials say, worked out once for all pans. */
interface Known {
  readonly kitchen: Kitchen;
  readonly variant: KitchenVariant;
  readonly calibration: CrispCalibration;
  readonly curve: VariantCrispTime | string;
}

function decisionOf(known: Known, pan: Pan, { advice, verdict, window, remedies }: PanVerdict): Decision {
  const { variant, calibration } = known;
  const first = remedies.length === 0 ? "" : `. Try: ${remedies[0].sentence}`;
  return Object.freeze({
    variantId: variant.variantId,
    variantName: variant.name,
    panId: pan.id,
    panName: pan.name,
    advice,
    reason: verdict,
    verdict: `${verdict}${first}`,
    remedies,
    setpointC: variant.setpointC,
    applianceId: variant.applianceId,
    units: known.kitchen.units,
    core: variant.limit,
    triedMm: calibration.logged?.thicknessMm ?? null,
    outcome: window === null ? null : outcomeOf(known, window),
  });
}

function outcomeOf({ kitchen, variant, calibration, curve }: Known, window: KitchenWindow): Outcome {
  const { slab, pieces } = window.batch as BatchOnPan;
  const { cardMin, lossPercent, lossSdPercent } = window.recommended;
  const reheatYield = {
    yieldPercent: 100 - lossPercent,
    standardErrorPercent: Math.hypot(lossSdPercent, calibration.noise.lossPercent),
  };
  const macros = pieceMacros({
    totals: formulaTotals(variant.formula, kitchen.ingredients),
    pieceG: pieces.pieceG,
    pieceSeG: pieces.pieceG * calibration.unevenness,
    surfaceMm2: pieces.surfaceMm2,
    reheat: { yieldPercent: reheatYield.yieldPercent, yieldSePercent: reheatYield.standardErrorPercent },
  });
  return Object.freeze({
    slab,
    pieces,
    window,
    witness: crispWitness({ kitchen, window, curve }),
    coreSafeMin: window.chances.safeFromMin,
    reheatMin: cardMin,
    reheatYield,
    macros,
  });
}
