import { within } from "../check/check";
import type { Pan } from "./pan";

/** How far each wall has leaned outwards at a height (mm). */
function leanMm(pan: Pan, heightMm: number): number {
  return heightMm * Math.tan((pan.wallTaperDeg * Math.PI) / 180);
}

/**
 * Area of the mix's face at a height above the inside bottom (all wells together), in mm². A rectangle with corner
 * radius r grows by the lean u on every side, corners included: A = (L + 2u)(W + 2u) − (4 − π)(r + u)².
 *
 * @param heightMm 0 to the pan's depth (mm)
 * @example
 * faceAreaMm2({ ...panPreset("half sheet"), cornerRadiusMm: 0 }, 0); // → 122348
 */
export function faceAreaMm2(pan: Pan, heightMm: number): number {
  within(heightMm, 0, pan.depthMm, "faceAreaMm2: heightMm", "mm (the pan's depth)");
  const u = leanMm(pan, heightMm);
  if (pan.shape === "rectangle")
    return (pan.bottomLengthMm + 2 * u) * (pan.bottomWidthMm + 2 * u) - (4 - Math.PI) * (pan.cornerRadiusMm + u) ** 2;
  const one = Math.PI * (pan.bottomDiameterMm / 2 + u) ** 2;
  return pan.shape === "wells" ? one * pan.wells : one;
}

/**
 * Volume of mix that fills a pan to a height (all wells together), in mL. The face area is a quadratic in height, so
 * Simpson's rule over the height is exact: V = h/6 · (A(0) + 4A(h/2) + A(h)).
 *
 * @param heightMm 0 to the pan's depth (mm)
 * @example
 * panVolumeMl(panPreset("half sheet"), 25); // → 3099.9
 */
export function panVolumeMl(pan: Pan, heightMm: number): number {
  const areas = faceAreaMm2(pan, 0) + 4 * faceAreaMm2(pan, heightMm / 2) + faceAreaMm2(pan, heightMm);
  return ((heightMm / 6) * areas) / 1000;
}
