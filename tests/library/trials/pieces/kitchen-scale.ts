import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";
import type { Kitchen, KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";
import { panOf, variantOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { batchOnPan } from "../../../../kernel-lib/library/src/trials/pieces/batch-on-pan";

/** What one weighed trial of `weighedTrials` is changed by: a slip of who writes the log, or of who cuts. */
export interface Slip {
  readonly variantId: string;
  readonly panId: string;
  /** area of the pieces that were cut, on that of the piece that was planned */
  readonly cutArea?: number;
  /** batch mass and probe readings as written, on the true ones */
  readonly batch?: number;
  readonly probes?: number;
}

/**
 * Trials of consistent pieces, by arithmetic of their own: a slab 5 to 17 mm thick, uneven by 3 to 6 %, probed at five places,
 * spread with 1 to 2 % left in the bowl, its density off by 2 %; pieces cut by hand within 0.8 mm, the pickup of that day within
 * its stated doubt.
 */
export function weighedTrials(kitchen: Kitchen, count: number, seed: number, slip: Slip): readonly KitchenTrial[] {
  const random = seededRandom(seed);
  const { variantId, panId, cutArea = 1, batch = 1, probes = 1 } = slip;
  const variant = variantOf(kitchen, variantId);
  const pan = panOf(kitchen, panId);
  const like = kitchen.trials.find((trial) => trial.variantId === variantId) as KitchenTrial;
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  return Array.from({ length: count }, (_, at): KitchenTrial => {
    const slabMm = Math.min(0.9 * pan.depthMm, 5 + 12 * random.uniform());
    const uneven = 0.03 + 0.03 * random.uniform();
    const densityKgM3 = variant.densityKgM3 * (1 + 0.02 * random.normal());
    const area = pan.shape === "rectangle" ? pan.bottomLengthMm * pan.bottomWidthMm : Number.NaN;
    const lean = slabMm * Math.tan((pan.wallTaperDeg * Math.PI) / 180);
    const perimeter = pan.shape === "rectangle" ? 2 * (pan.bottomLengthMm + pan.bottomWidthMm) : Number.NaN;
    const batchG = (area + (perimeter * lean) / 2) * slabMm * densityKgM3 * 1e-6;
    const [lengthMm, widthMm] = batchOnPan({ kitchen, variant, pan, batchG }).sidesMm;
    const pickups = variant.formula.coating.map(({ pickupPercent, pickupSePercent, pickupBasis, atSurfaceCm2PerG }) => {
      const percent = pickupPercent + pickupSePercent * random.normal();
      return { share: pickupBasis === "substrate" ? percent / 100 : percent / (100 - percent), atSurfaceCm2PerG };
    });
    const pieces = 4 + Math.floor(9 * random.uniform());
    const massesG = Array.from({ length: pieces }, () => {
      const wander = (sideMm: number): number => sideMm * Math.sqrt(cutArea) + 0.8 * random.normal();
      const [l, w, t] = [wander(lengthMm), wander(widthMm), slabMm * (1 + uneven * random.normal())];
      const bareG = l * w * t * densityKgM3 * 1e-6;
      const cm2PerG = (2 * (l * w + l * t + w * t)) / 100 / bareG;
      return pickups.reduce(
        (massG, { share, atSurfaceCm2PerG }) =>
          massG * (1 + share * (atSurfaceCm2PerG === undefined ? 1 : cm2PerG / atSurfaceCm2PerG)),
        bareG,
      );
    });
    const readings = Array.from({ length: 5 }, () => probes * slabMm * (1 + uneven * random.normal()));
    const thicknessMm = mean(readings);
    const massBeforeG = massesG.reduce((sum, massG) => sum + massG, 0);
    return {
      ...like,
      trialId: `W-${at}`,
      panId,
      batchG: batch * batchG * (1.01 + 0.01 * random.uniform()),
      probesMm: readings,
      thicknessMm,
      thicknessSdMm: Math.sqrt(readings.reduce((sum, one) => sum + (one - thicknessMm) ** 2, 0) / 4),
      massBeforeG,
      massAfterG: 0.92 * massBeforeG,
      pieces,
    };
  });
}
