import type { CrispCalibration } from "../crisp/calibration/calibrate-crisp";
import { predictSlabTime, type SlabTimePrediction } from "../fit/curve/predict-slab-time";
import { intervalFactor } from "../fit/doubt/interval-factor";
import { formulaTotals } from "../food/formula/formula-totals";
import { type PieceMacros, pieceMacros } from "../macros/piece-macros";
import type { Pan } from "../pan/pan";
import { slabMassG } from "../pan/slab-mass";
import { type Slab, slabThickness } from "../pan/slab-thickness";
import { type CoreLimit, coreLimit } from "../safety/core-limit";
import { studentTCdf } from "../statistics/distributions/student-t-distribution";
import type { Kitchen, KitchenVariant } from "../trials/kitchen";
import { crispWindow } from "./crisp-window";
import { type PiecesOnPan, piecesOnPan } from "./pieces-on-pan";
import { type ExpectedYield, expectedYield, reheatYield } from "./reheat-yield";
import { type VariantCrispTime, variantCrispTime } from "./variant-crisp-time";
import { windowCalibration } from "./window-calibration";

/** What to do with a variant on a pan. */
export type Advice =
  | "keep"
  | "on the edge"
  | "too thick"
  | "outside what was tried"
  | "does not fit"
  | "other kind of pan";

/** One variant's whole batch on one pan of the kitchen: what comes of it, how sure, and what to do. */
export interface Decision {
  readonly variantId: string;
  readonly variantName: string;
  readonly panId: string;
  readonly panName: string;
  readonly advice: Advice;
  /** the advice in words, with what to change */
  readonly verdict: string;
  readonly setpointC: number;
  readonly applianceId: string;
  /** stands beside every time */
  readonly core: CoreLimit;
  /** thicknesses that were tried (mm) */
  readonly triedMm: readonly [number, number];
  /** `null` when the batch does not go on this pan */
  readonly outcome: Outcome | null;
}

/** What comes of the batch, when it goes on the pan. */
export interface Outcome {
  readonly slab: Slab;
  readonly pieces: PiecesOnPan;
  /** time to crisp, with its 95 % intervals and whether the thickness was tried */
  readonly crisp: SlabTimePrediction;
  /** chance that one more reheat takes longer to crisp than the variant allows, 0 to 1 */
  readonly chanceTooLong: number;
  /** time from which 99.5 % of pieces have their core at the limit (min) */
  readonly coreSafeMin: number;
  /** the later of crisp and core (min): never take out before */
  readonly reheatMin: number;
  readonly reheatYield: ExpectedYield;
  readonly macros: PieceMacros;
}

/** Pieces drawn for the time from which a core is safe. */
const DRAWS = 1000;
/** From this share of reheats past the accepted time on, a setting is on the edge; our judgement. */
const LATE_CHANCE = 0.1;
/** A batch is split over at most so many pans. */
const MOST_PANS = 12;

/**
 * Goes through every variant and every pan of a kitchen with the variant's whole batch: slab thickness, cut, pieces,
 * crisp time on the variant's own appliance and setpoint (`variantCrispTime`), reheat yield, macros, and a verdict.
 *
 * The core time is the one from which 99.5 % of pieces have their core at the limit, by the clocks that the kitchen's own
 * core readings calibrate (`windowCalibration`, `crispWindow`). It is calculated, no measurement: probe the thickest
 * piece. `reheatMin` is the later of crisp and core, so that no time here leaves the core below its limit.
 *
 * Verdicts: "keep" when the thickness was tried and nine reheats in ten are within the variant's longest; "on the edge"
 * when fewer are; "too thick" when the expected one is not, with the fewest pans that bring it back; "outside what was tried" when the curve would have to be extrapolated.
 */
export function decide(kitchen: Kitchen): readonly Decision[] {
  return Object.freeze(
    kitchen.variants.flatMap((variant) => {
      const known = whatIsKnown(kitchen, variant);
      return kitchen.pans.map((pan) => decideOne(known, pan));
    }),
  );
}

/** A variant with all that its trials and formula say, worked out once for all pans. */
interface Known {
  readonly kitchen: Kitchen;
  readonly variant: KitchenVariant;
  readonly crispTime: VariantCrispTime;
  readonly yields: ReturnType<typeof reheatYield>;
  readonly totals: ReturnType<typeof formulaTotals>;
  readonly calibration: CrispCalibration;
  readonly core: CoreLimit;
}

function whatIsKnown(kitchen: Kitchen, variant: KitchenVariant): Known {
  const { variantId, formula } = variant;
  const crispTime = variantCrispTime(kitchen, variantId);
  return {
    kitchen,
    variant,
    crispTime,
    yields: reheatYield(kitchen, variantId, crispTime),
    totals: formulaTotals(formula, kitchen.ingredients),
    calibration: windowCalibration({ kitchen, variantId }),
    core: coreLimit(formula.foodClass),
  };
}

function decideOne(known: Known, pan: Pan): Decision {
  const { variant, crispTime, core } = known;
  const refused = refusal(known, pan);
  const outcome = refused === null ? outcomeOn(known, pan) : null;
  const { advice, verdict } = refused ?? judge(known, pan, outcome as Outcome);
  return Object.freeze({
    variantId: variant.variantId,
    variantName: variant.name,
    panId: pan.id,
    panName: pan.name,
    advice,
    verdict,
    setpointC: variant.setpointC,
    applianceId: variant.applianceId,
    core,
    triedMm: crispTime.fit.rangeX as readonly [number, number],
    outcome,
  });
}

interface Verdict {
  readonly advice: Advice;
  readonly verdict: string;
}

/** Why a variant's batch cannot go on a pan at all, or `null` when it can. */
function refusal(known: Known, pan: Pan): Verdict | null {
  const { variant } = known;
  if (variant.form === "batter" && pan.shape !== "wells")
    return { advice: "other kind of pan", verdict: "a batter: bake it in wells" };
  if (variant.form === "slab" && pan.shape === "wells")
    return { advice: "other kind of pan", verdict: "a slab to cut: spread it on a sheet" };
  if (fits(variant, pan)) return null;
  const verdict = `does not fit (${pan.name} holds ${Math.floor(brimG(variant, pan))} g): ${split(known, pan)}`;
  return { advice: "does not fit", verdict };
}

function brimG(variant: KitchenVariant, pan: Pan): number {
  return slabMassG({ pan, thicknessMm: pan.depthMm, densityKgM3: variant.densityKgM3 });
}

function fits(variant: KitchenVariant, pan: Pan): boolean {
  return variant.batchG <= brimG(variant, pan);
}

function outcomeOn(known: Known, pan: Pan): Outcome {
  const { kitchen, variant, crispTime, yields, totals, calibration } = known;
  const { batchG, densityKgM3 } = variant;
  const slab = slabThickness({ pan, batchG, densityKgM3 });
  const pieces = piecesOnPan({ kitchen, variant, pan, slab });
  const crisp = predictSlabTime(crispTime.fit, slab.thicknessMm);
  const coreSafeMin = crispWindow({
    kitchen,
    variantId: variant.variantId,
    thicknessMm: slab.thicknessMm,
    calibration,
    draws: DRAWS,
  }).chances.safeFromMin;
  const reheatMin = Math.max(crisp.timeMin, coreSafeMin);
  const expected = expectedYield(yields, slab.thicknessMm, reheatMin);
  const macros = pieceMacros({
    totals,
    pieceG: pieces.pieceG,
    pieceSeG: pieces.pieceG * calibration.unevenness,
    surfaceMm2: pieces.surfaceMm2,
    reheat: { yieldPercent: expected.yieldPercent, yieldSePercent: expected.standardErrorPercent },
  });
  return Object.freeze({
    slab,
    pieces,
    crisp,
    chanceTooLong: chanceBeyond(crisp, variant.longestMin, crispTime),
    coreSafeMin,
    reheatMin,
    reheatYield: expected,
    macros,
  });
}

/** Chance that one more trial takes longer than a limit, from Student's t around the prediction. */
function chanceBeyond(crisp: SlabTimePrediction, limitMin: number, { fit }: VariantCrispTime): number {
  const halfWidth = crisp.prediction95[1] - crisp.timeMin;
  const standardError = halfWidth / intervalFactor(fit);
  return 1 - studentTCdf((limitMin - crisp.timeMin) / standardError, fit.degreesOfFreedom);
}

function judge(known: Known, pan: Pan, outcome: Outcome): Verdict {
  const { variant, crispTime } = known;
  const { slab, crisp, reheatMin, coreSafeMin, chanceTooLong } = outcome;
  const [thinnest, thickest] = crispTime.fit.rangeX as readonly [number, number];
  const tried = `${thinnest.toFixed(1)} to ${thickest.toFixed(1)} mm`;
  if (reheatMin > variant.longestMin) {
    const beyond = crisp.extrapolated ? `, beyond the ${tried} that were tried` : "";
    return { advice: "too thick", verdict: `too thick${beyond}: ${split(known, pan)}` };
  }
  if (crisp.extrapolated) {
    const side = slab.thicknessMm < thinnest ? "thinner" : "thicker";
    return {
      advice: "outside what was tried",
      verdict: `outside what was tried: ${side} than ${tried}; log a trial first`,
    };
  }
  const held = coreSafeMin > crisp.timeMin ? `; hold to ${Math.ceil(reheatMin)} min for the core` : "";
  const late = `${Math.round(100 * chanceTooLong)} % run past ${variant.longestMin} min`;
  if (chanceTooLong > LATE_CHANCE) return { advice: "on the edge", verdict: `on the edge: ${late}${held}` };
  return { advice: "keep", verdict: `keep${chanceTooLong >= 0.01 ? ` (${late})` : ""}${held}` };
}

/** In words: the fewest pans of one kind that bring a batch to a thickness that was tried and reheats in time. */
function split(known: Known, pan: Pan): string {
  const { variant, crispTime } = known;
  const [thinnest] = crispTime.fit.rangeX as readonly [number, number];
  for (let pans = 2; pans <= MOST_PANS; pans++) {
    const share = { ...variant, batchG: variant.batchG / pans };
    if (!fits(share, pan)) continue;
    const { crisp, reheatMin } = outcomeOn({ ...known, variant: share }, pan);
    if (crisp.thicknessMm < thinnest) break;
    if (!crisp.extrapolated && reheatMin <= variant.longestMin)
      return `split over ${pans} ${pan.name}s${pans > pan.count ? ` (the kitchen has ${pan.count})` : ""}`;
  }
  return `no split over ${pan.name}s lands on a thickness that was tried`;
}
