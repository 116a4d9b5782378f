import type { Kitchen, KitchenTrial } from "../kitchen";
import { isUsual, type WeightOfTrial, weightOfTrial } from "./weight-of-trial";

/** What `weightWitness` works from. */
export interface WeightWitnessOptions {
  readonly kitchen: Pick<Kitchen, "pans" | "variants">;
  readonly trial: KitchenTrial;
  /** thickness by the batch mass (mm), where the trial's own is by the probes */
  readonly massMm: number;
}

/** Whom the scale agrees with where probes and batch mass contradict each other. */
export interface WeightWitness {
  /** `"either"` when the scale cannot tell the two apart */
  readonly goesWith: "probes" | "batch" | "either" | "neither";
  /** one piece as weighed, as the probes make it, as the batch mass makes it (g) */
  readonly weighedG: number;
  readonly probesG: number;
  readonly batchG: number;
}

/** By how many standard deviations one of the two must be nearer. */
const CLEARER = 2;

/**
 * Asks the pieces on the scale which of two thicknesses the slab had: that of the probes or that of the batch mass.
 *
 * @returns whom it agrees with, and the three masses; `null` where pieces were not weighed, or not counted
 */
export function weightWitness({ kitchen, trial, massMm }: WeightWitnessOptions): WeightWitness | null {
  const byProbes = weightOfTrial({ kitchen, trial });
  const byBatch = weightOfTrial({ kitchen, trial: { ...trial, thicknessMm: massMm, thicknessSdMm: null } });
  if (byProbes === null || byBatch === null) return null;
  return Object.freeze({
    goesWith: goesWith(byProbes, byBatch),
    weighedG: byProbes.weighedG,
    probesG: byProbes.calculatedG,
    batchG: byBatch.calculatedG,
  });
}

function goesWith(byProbes: WeightOfTrial, byBatch: WeightOfTrial): WeightWitness["goesWith"] {
  if (!isUsual(byProbes) && !isUsual(byBatch)) return "neither";
  const nearer = farFrom(byBatch) - farFrom(byProbes);
  if (Math.abs(nearer) < CLEARER * byProbes.doubt) return "either";
  return nearer > 0 ? "probes" : "batch";
}

/** Distance of the logarithm from what is likely: all between what heat may leave of a piece, low · high, and the whole of it. */
function farFrom({ ratio, usual: [low, high] }: WeightOfTrial): number {
  return Math.max(0, Math.log(ratio), Math.log((low * high) / ratio));
}
