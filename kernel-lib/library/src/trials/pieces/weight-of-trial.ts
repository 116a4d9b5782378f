import type { FoodState } from "../../food/formula/formula";
import { pieceOf } from "../../pan/piece";
import { slabMassG } from "../../pan/slab-mass";
import { normOf } from "../../statistics/linear-algebra/norm-of";
import { coatPiece } from "../../yield/coat-piece";
import type { Kitchen, KitchenTrial } from "../kitchen";
import { panOf, variantOf } from "../kitchen-lookup";
import { batchOnPan } from "./batch-on-pan";
import { thicknessDoubt } from "./thickness-doubt";

/** What `weightOfTrial` works from. */
export interface WeightOfTrialOptions {
  readonly kitchen: Pick<Kitchen, "pans" | "variants">;
  readonly trial: KitchenTrial;
}

/** The piece on the scale, as it went in, against the piece that cut, thickness, density and pickup make. */
export interface WeightOfTrial {
  /** one piece as weighed (g) */
  readonly weighedG: number;
  /** one coated piece as calculated (g) */
  readonly calculatedG: number;
  /** the same before its coating (g) */
  readonly bareG: number;
  /** sides of the piece from above (mm); in wells the diameter twice */
  readonly sidesMm: readonly [number, number];
  /** weighed on calculated [-] */
  readonly ratio: number;
  /** where the ratio lies when nothing is wrong [-] */
  readonly usual: readonly [number, number];
  /** standard deviation of the ratio's logarithm when nothing is wrong [-] */
  readonly doubt: number;
}

/** Standard error of a mix's density [-]: 26 of 33 foods lie within 4 % of Choi and Okos (`tests/published`); the air is a guess. */
const DENSITY_SE = 0.03;
/** Unevenness within a slab that was not probed twice [-]: that of `USUAL_UNEVENNESS`. */
const UNEVENNESS = 0.03;
/** How far a cut by hand wanders (mm); our judgement. */
const CUT_SD_MM = 1;
/** Trim, part pieces and the choice of pieces [-]: cut as the variant or the log says, or on another pan; our judgement. */
const CHOICE_SE = { known: 0.02, otherPan: 0.06 } as const;
/** A ratio nearer to 1 than this is never odd [-]: common practice, no source. */
const LEAST_ODD = 0.15;
/** Standard deviations that are never odd. */
const DEVIATIONS = 3;
/**
 * What heating before the freezer may leave of a piece [-]. Cooked through: ground meat keeps 0.63 to 0.77 (USDA SR28,
 * household weights of patties and loaves); half of that loss for a par-cook is our judgement.
 */
const LEAST_LEFT: Readonly<Record<FoodState, number>> = { raw: 1, "par-cooked": 0.82, "cooked and cooled": 0.63 };

/**
 * Holds `before_g / pieces` against the coated piece that goes into the appliance: m = l·w·t·ρ with its coating (`coatPiece`),
 * in wells m = ρ·V(t)/wells. The second witness of a slab's thickness, beside probes and batch mass.
 *
 * The ratio is usual within 15 % and within three standard deviations of what is not known: thickness, density, cut, choice of
 * pieces, pickup. A formula that is par-cooked or cooked and cooled may weigh less by what that heat took.
 *
 * @returns `null` where pieces were not weighed, or not counted
 * @example
 * const kitchen = loadKitchen();
 * weightOfTrial({ kitchen, trial: trialOf(kitchen, "BL-14") }).ratio; // → 1
 */
export function weightOfTrial({ kitchen, trial }: WeightOfTrialOptions): WeightOfTrial | null {
  const { massBeforeG, pieces } = trial;
  if (massBeforeG === null || pieces === null) return null;
  const { coating, state = "raw" } = variantOf(kitchen, trial.variantId).formula;
  const piece = bareOf(kitchen, trial);
  const coated = coatPiece({ layers: coating, pieceG: piece.massG, surfaceMm2: piece.surfaceMm2 });
  const weighedG = massBeforeG / pieces;
  const own = trial.thicknessSdMm === null ? UNEVENNESS : trial.thicknessSdMm / trial.thicknessMm;
  const perPiece = normOf([own, ...piece.sidesMm.map((side) => (Math.SQRT2 * CUT_SD_MM) / side)]);
  const doubt = normOf([
    thicknessDoubt(trial),
    DENSITY_SE,
    CHOICE_SE[piece.isCutKnown ? "known" : "otherPan"],
    perPiece / Math.sqrt(pieces),
    ...coated.layers.map(({ layerSeG, afterG }) => layerSeG / afterG),
  ]);
  const limit = Math.max(Math.log(1 + LEAST_ODD), DEVIATIONS * doubt);
  return Object.freeze({
    weighedG,
    calculatedG: coated.coatedG,
    bareG: piece.massG,
    sidesMm: piece.sidesMm,
    ratio: weighedG / coated.coatedG,
    usual: Object.freeze([LEAST_LEFT[state] * Math.exp(-limit), Math.exp(limit)] as const),
    doubt,
  });
}

/** Whether the scale says what it ought to. */
export function isUsual({ ratio, usual: [low, high] }: WeightOfTrial): boolean {
  return ratio >= low && ratio <= high;
}

interface Bare {
  readonly massG: number;
  readonly surfaceMm2: number;
  readonly sidesMm: readonly [number, number];
  /** whether log or variant says how this pan is cut */
  readonly isCutKnown: boolean;
}

function bareOf(kitchen: WeightOfTrialOptions["kitchen"], trial: KitchenTrial): Bare {
  const { pieceLengthMm, pieceWidthMm, thicknessMm } = trial;
  const variant = variantOf(kitchen, trial.variantId);
  const { densityKgM3 } = variant;
  if (pieceLengthMm !== null && pieceWidthMm !== null) {
    const piece = pieceOf({ lengthMm: pieceLengthMm, widthMm: pieceWidthMm, thicknessMm, densityKgM3 });
    return { ...piece, sidesMm: [pieceLengthMm, pieceWidthMm], isCutKnown: true };
  }
  const pan = panOf(kitchen, trial.panId);
  const inPanMm = Math.min(thicknessMm, pan.depthMm);
  const batchG = slabMassG({ pan, thicknessMm: inPanMm, densityKgM3 });
  const { pieces, sidesMm } = batchOnPan({ kitchen, variant, pan, batchG });
  return {
    massG: (pieces.pieceG * thicknessMm) / inPanMm,
    surfaceMm2: pieces.surfaceMm2,
    sidesMm,
    isCutKnown: pan.id === variant.panId || pan.shape === "wells",
  };
}
