import { reheatCard } from "slabwright";
import { windowCalibration } from "slabwright/advice";
import { worldKitchen } from "../world-kitchen";
import { cardKitchen } from "./card-kitchen";
import { cardLog } from "./card-log";
import { coldLoadsAt, loadTruth, safeLoadsFrom } from "./load-truth";

/** What a kitchen's card said, and what is true of it. */
export interface HeldCard {
  readonly seed: number;
  readonly product: string;
  readonly world: number;
  readonly raw: boolean;
  readonly tidy: boolean;
  readonly trials: number;
  readonly ready: boolean;
  /** conditions of the card that are not met */
  readonly unmet: readonly string[];
  /** printed: take out after, core by (min) */
  readonly cardMin: number;
  readonly coreByMin: number;
  /** most probable core of the typical piece (min), and the truth */
  readonly coreMin: number;
  readonly trueCoreMin: number;
  /** what 99 of 100 loads take (min) */
  readonly trueCoreByMin: number;
  /** loads drawn, and those with a cold piece at either time */
  readonly loads: number;
  readonly coldAtCard: number;
  readonly coldAtCoreBy: number;
  readonly success: number;
}

const LOADS = 4000;

/** Draws a kitchen, lets it log, and holds the card that the library prints for it against the truth. */
export function holdCard(seed: number): HeldCard {
  const drawn = cardKitchen(seed);
  const { plan, setting, habits } = drawn;
  const { world, emulator, stored } = plan;
  const { product } = world;
  const kitchen = worldKitchen({ ...stored, trials: cardLog(drawn) }, habits.trials);
  const { window, ready, evidence } = reheatCard({
    kitchen,
    calibration: windowCalibration({ kitchen, variantId: product.id }),
    variantId: product.id,
    thicknessMm: setting.thicknessMm,
    piece: { lengthMm: setting.lengthMm, widthMm: setting.widthMm },
    setpointC: setting.setpointC,
    loadFraction: setting.loadFraction,
    turned: product.turned,
    tooDryPercent: stored.tooDryPercent,
  });
  const truth = loadTruth({ world, emulator, setting, loads: LOADS, seed: 1_000_000 + seed });
  const { cardMin, success } = window.recommended;
  const coreByMin = window.chances.safeFromMin;
  return {
    seed,
    product: product.id,
    world: plan.world.seed,
    raw: product.formula.foodClass !== undefined && product.formula.foodClass !== "plant",
    tidy: habits.tidy,
    trials: habits.trials,
    ready,
    unmet: evidence.filter(({ met }) => !met).map(({ name }) => name),
    cardMin,
    coreByMin,
    coreMin: window.core.min,
    trueCoreMin: truth.typicalMin,
    trueCoreByMin: safeLoadsFrom(truth, 0.99),
    loads: LOADS,
    coldAtCard: coldLoadsAt(truth, cardMin),
    coldAtCoreBy: coldLoadsAt(truth, coreByMin),
    success,
  };
}
