import type { KitchenTrial } from "../kitchen";

/** Standard error of a thickness that was probed but once, or only weighed [-]; our judgement. */
const THICKNESS_SE = 0.03;
/** A few probes, however alike, do not know a slab's mean better than this [-]; our judgement. */
const LEAST_THICKNESS_SE = 0.01;

/** Standard error of a trial's mean thickness, on that thickness [-]. */
export function thicknessDoubt({ thicknessSdMm, probesMm, thicknessMm }: KitchenTrial): number {
  const own = thicknessSdMm === null ? THICKNESS_SE : thicknessSdMm / Math.sqrt(probesMm.length) / thicknessMm;
  return Math.max(LEAST_THICKNESS_SE, own);
}
