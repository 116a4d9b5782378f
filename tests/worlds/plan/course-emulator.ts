import { readFileSync } from "node:fs";
import type { Product } from "../products";
import { surfaceTerms, weightsThrough } from "../setting-truth";
import { COURSE_RANGE, COURSES, type CourseOf, type CoursePlace, type StoredCourses } from "./course";

/** The courses of one world, read at any place within their ranges. */
export interface CourseEmulator {
  readonly courses: StoredCourses;
  /** when each level is reached (min), in the order of the levels */
  readonly minutesAt: (place: CoursePlace) => Record<CourseOf, Float64Array>;
  readonly after: AfterOut;
}

/** What goes on after taking out. */
export interface AfterOut {
  /** weights of `restTerms`: rise of the core to a quarter of a minute after, and to its highest within two (K) */
  readonly out: readonly number[];
  readonly rested: readonly number[];
  /** a probe's tip 1.3 mm from the core is warmer by this, as a share of what the core lacks to 100 °C, in a slab of 10 mm */
  readonly besideK: number;
  /** loss goes on for so long (min) */
  readonly lossMin: number;
}

/** The stored courses of a world. */
export function storedCourses(product: string, seed: number): StoredCourses {
  return JSON.parse(readFileSync(new URL(`courses/${product}-${seed}.json`, import.meta.url), "utf8")) as StoredCourses;
}

/** Lays surfaces through the logarithms of the times of every level: quadratic in all factors, cubic in coat and thickness. */
export function courseEmulator(courses: StoredCourses, product: Product): CourseEmulator {
  const coated = courses.pieces.some(({ place }) => place.coat !== 1);
  const placeOf = (place: CoursePlace): number[] => [
    ...(coated ? [Math.log(place.coat) / COURSE_RANGE.coat] : []),
    (2 * Math.log(place.thicknessMm / product.thicknessMm)) / Math.log(1.6 / 0.62),
    Math.log(place.coefficient) / COURSE_RANGE.coefficient,
    (place.setpointC - product.setpointC) / COURSE_RANGE.setpointK,
    3 * (place.loadFraction - 0.6),
  ];
  const cubic = coated ? [0, 1, 2] : [0, 1];
  const rows = courses.pieces.map(({ place }) => surfaceTerms(placeOf(place), cubic));
  const weights = COURSES.map((of) =>
    courses.levels[of].map((_, level) => {
      const those = courses.pieces.flatMap(({ minutes }, at) => {
        const minute = minutes[of][level];
        return minute === null ? [] : [[rows[at], Math.log(minute)] as const];
      });
      return weightsThrough(
        those.map(([row]) => row),
        those.map(([, value]) => value),
      );
    }),
  );
  const minutesAt = (place: CoursePlace): Record<CourseOf, Float64Array> => {
    const terms = surfaceTerms(placeOf(place), cubic);
    const found = {} as Record<CourseOf, Float64Array>;
    for (const [at, of] of COURSES.entries()) {
      const minutes = new Float64Array(weights[at].length);
      for (const [level, weight] of weights[at].entries()) {
        let log = 0;
        for (let term = 0; term < terms.length; term++) log += terms[term] * weight[term];
        minutes[level] = Math.max(Math.exp(log), level === 0 ? 0 : minutes[level - 1] + 1e-3);
      }
      found[of] = minutes;
    }
    return found;
  };
  return { courses, minutesAt, after: restOf(courses, product, minutesAt) };
}

/** What goes on after taking out, by least squares on the rested pieces. */
function restOf(courses: StoredCourses, product: Product, minutesAt: CourseEmulator["minutesAt"]): AfterOut {
  const { levels, rested } = courses;
  const known = rested.map((piece) => {
    const { coreC, lossPercent } = minutesAt(piece.place);
    const rate = rateAt(levels.coreC, coreC, piece.timeMin);
    const thicker = piece.place.thicknessMm / product.thicknessMm;
    return {
      piece,
      terms: restTerms(rate, piece.coreC, thicker),
      lossRate: rateAt(levels.lossPercent, lossPercent, piece.timeMin),
    };
  });
  const rows = known.map(({ terms }) => terms);
  const rises = known.filter(({ piece }) => piece.restedC > piece.outC + 0.05);
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    out: weightsThrough(
      rows,
      rested.map(({ outC, coreC }) => outC - coreC),
    ),
    rested: weightsThrough(
      rises.map(({ terms }) => terms),
      rises.map(({ piece }) => piece.restedC - piece.coreC),
    ),
    besideK: mean(
      rested.map(({ besideC, outC, place }) => ((besideC - outC) * (place.thicknessMm / 10) ** 2) / (100 - outC)),
    ),
    lossMin: mean(known.map(({ piece, lossRate }) => (piece.weighedPercent - piece.lossPercent) / lossRate)),
  };
}

function restTerms(rateKMin: number, coreC: number, thicker: number): readonly number[] {
  return [1, rateKMin, rateKMin * (thicker - 1), (coreC - 45) / 10 / thicker ** 2];
}

/** Change of a course a minute, over 4 % of its time. */
export function rateAt(levels: readonly number[], minutes: Float64Array, timeMin: number): number {
  return (levelAt(levels, minutes, 1.02 * timeMin) - levelAt(levels, minutes, 0.98 * timeMin)) / (0.04 * timeMin);
}

/** Core of a piece (°C) a quarter of a minute after it was taken out, and its highest within two. */
export function restedCore(
  { out, rested }: AfterOut,
  { coreC, rateKMin, thicker }: { readonly coreC: number; readonly rateKMin: number; readonly thicker: number },
): { readonly outC: number; readonly restedC: number } {
  const terms = restTerms(rateKMin, coreC, thicker);
  const rise = (weights: readonly number[]): number => terms.reduce((sum, term, at) => sum + term * weights[at], 0);
  const outC = coreC + rise(out);
  return { outC, restedC: Math.max(outC, coreC + rise(rested)) };
}

/** The level that a course has come to at a time: between levels in a straight line over the logarithm of time. */
export function levelAt(levels: readonly number[], minutes: Float64Array, timeMin: number): number {
  let at = 0;
  while (at < minutes.length - 2 && minutes[at + 1] < timeMin) at++;
  const share = Math.log(timeMin / minutes[at]) / Math.log(minutes[at + 1] / minutes[at]);
  return levels[at] + share * (levels[at + 1] - levels[at]);
}

/** When a course comes to a level (min); levels may fall. */
export function minuteOf(levels: readonly number[], minutes: Float64Array, level: number): number {
  const way = Math.sign(levels[1] - levels[0]);
  let at = 0;
  while (at < levels.length - 2 && way * levels[at + 1] < way * level) at++;
  const share = (level - levels[at]) / (levels[at + 1] - levels[at]);
  return minutes[at] * (minutes[at + 1] / minutes[at]) ** share;
}
