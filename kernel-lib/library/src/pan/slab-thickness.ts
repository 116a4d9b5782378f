import { fail, positive } from "../check/check";
import { checkPan, type Pan } from "./pan";
import { faceAreaMm2, panVolumeMl } from "./pan-volume";

/** What `slabThickness` works from. */
export interface SlabThicknessOptions {
  readonly pan: Pan;
  /** mass of mix on one pan (g) */
  readonly batchG: number;
  /** density of the mix as spread, air included (kg/m³) */
  readonly densityKgM3: number;
}

/** A batch spread level on a pan. */
export interface Slab {
  readonly panId: string;
  /** level thickness (mm) */
  readonly thicknessMm: number;
  readonly batchG: number;
  readonly densityKgM3: number;
  /** mean of the lower and the upper face (mm²) */
  readonly meanAreaMm2: number;
  /** mass over mean face (g/cm²) */
  readonly massPerAreaGCm2: number;
  /** share of the pan's depth that is filled, 0 to 1 */
  readonly depthFilled: number;
}

/** A batch that fills the pan to the brim, worked out from its depth, may come back larger by so much [-]. */
const ROUNDING = 1e-12;

/**
 * Level thickness of a batch on a pan, from V(t) = m/ρ with the pan's own leaning walls and rounded corners. The
 * volume below a height rises steadily, so the thickness is found by safeguarded Newton steps to 1e-9 mm.
 *
 * Returns a `Slab` with the thickness in mm. Assumes that the mix is spread level and wets the whole bottom. Throws
 * when the batch does not fit, saying what the pan holds.
 *
 * @example
 * const slab = slabThickness({ pan: panPreset("half sheet"), batchG: 1200, densityKgM3: 1050 });
 * slab.thicknessMm; // → 9.304
 * slabThickness({ pan: panPreset("eighth sheet"), batchG: 1200, densityKgM3: 1050 }); // throws "holds at most"
 */
export function slabThickness(options: SlabThicknessOptions): Slab {
  const pan = checkPan(options.pan, "slabThickness: pan");
  const batchG = positive(options.batchG, "slabThickness: batchG", "g");
  const densityKgM3 = positive(options.densityKgM3, "slabThickness: densityKgM3", "kg/m3");
  const targetMl = batchG / (densityKgM3 / 1000);
  const brimMl = panVolumeMl(pan, pan.depthMm);
  if (targetMl > brimMl * (1 + ROUNDING)) {
    const holdsG = Math.floor((brimMl * densityKgM3) / 1000);
    fail("slabThickness: batchG", `must fit the pan: ${pan.id} holds at most ${holdsG} g of this mix`, batchG);
  }
  let low = 0;
  let high = pan.depthMm;
  let thicknessMm = Math.min(high, (targetMl * 1000) / faceAreaMm2(pan, 0));
  for (let step = 0; step < 60; step++) {
    const overMl = panVolumeMl(pan, thicknessMm) - targetMl;
    if (overMl > 0) high = thicknessMm;
    else low = thicknessMm;
    const newton = thicknessMm - (overMl * 1000) / faceAreaMm2(pan, thicknessMm);
    const next = newton >= low && newton <= high ? newton : (low + high) / 2;
    const moved = Math.abs(next - thicknessMm);
    thicknessMm = next;
    if (moved < 1e-9) break;
  }
  const meanAreaMm2 = (targetMl * 1000) / thicknessMm;
  return Object.freeze({
    panId: pan.id,
    thicknessMm,
    batchG,
    densityKgM3,
    meanAreaMm2,
    massPerAreaGCm2: batchG / (meanAreaMm2 / 100),
    depthFilled: thicknessMm / pan.depthMm,
  });
}
