import { positive, within } from "../check/check";
import { checkPan, type Pan } from "./pan";
import { panVolumeMl } from "./pan-volume";

/** What `slabMassG` works from. */
export interface SlabMassOptions {
  readonly pan: Pan;
  /** wanted level thickness, up to the pan's depth (mm) */
  readonly thicknessMm: number;
  /** density of the mix as spread, air included (kg/m³) */
  readonly densityKgM3: number;
}

/**
 * Mass of mix that makes a slab of a wanted thickness on a pan (g): m = ρ·V(t). The inverse of `slabThickness`.
 *
 * @example
 * slabMassG({ pan: panPreset("quarter sheet"), thicknessMm: 9, densityKgM3: 1050 }); // → 562.65
 */
export function slabMassG(options: SlabMassOptions): number {
  const pan = checkPan(options.pan, "slabMassG: pan");
  const densityKgM3 = positive(options.densityKgM3, "slabMassG: densityKgM3", "kg/m3");
  const thicknessMm = within(options.thicknessMm, 0, pan.depthMm, "slabMassG: thicknessMm", `mm (depth of ${pan.id})`);
  return (panVolumeMl(pan, thicknessMm) * densityKgM3) / 1000;
}
