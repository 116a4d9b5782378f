import { fail, positive } from "../check/check";
import { largestOf, smallestOf } from "../statistics/extremes";

/** How even a slab is, from depth-probe readings. */
export interface Evenness {
  readonly readings: number;
  readonly meanMm: number;
  /** standard deviation between readings, n − 1 (mm) */
  readonly sdMm: number;
  readonly minMm: number;
  readonly maxMm: number;
  /** standard deviation over mean, 0 and up */
  readonly coefficientOfVariation: number;
  /** standard error of the mean (mm) */
  readonly meanStandardErrorMm: number;
}

/**
 * Mean, spread and range of thickness readings over one slab. Read it at five places or more, corners and middle: a
 * wedge shows as a wide range, and its thick end is the last to get hot.
 *
 * @param probesMm two readings or more (mm)
 * @example
 * const slab = evenness([8.2, 7.9, 8.4, 8.0, 8.5]);
 * slab.meanMm; // → 8.2
 * slab.sdMm; // → 0.255
 * evenness([8.2]); // throws "must hold two readings or more"
 */
export function evenness(probesMm: readonly number[]): Evenness {
  if (probesMm.length < 2) fail("evenness: probesMm", "must hold two readings or more to show a spread", probesMm);
  for (const [at, reading] of probesMm.entries()) positive(reading, `evenness: reading ${at + 1}`, "mm");
  const readings = probesMm.length;
  const meanMm = probesMm.reduce((sum, reading) => sum + reading, 0) / readings;
  const sdMm = Math.sqrt(probesMm.reduce((sum, reading) => sum + (reading - meanMm) ** 2, 0) / (readings - 1));
  return Object.freeze({
    readings,
    meanMm,
    sdMm,
    minMm: smallestOf(probesMm),
    maxMm: largestOf(probesMm),
    coefficientOfVariation: sdMm / meanMm,
    meanStandardErrorMm: sdMm / Math.sqrt(readings),
  });
}
