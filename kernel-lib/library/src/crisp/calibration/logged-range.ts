import { largestOf, smallestOf } from "../../statistics/extremes";
import { LOOSE_LOAD } from "../clocks/load-effect";
import type { CrispObservation } from "./crisp-observation";

/** What a log has tried: between which values a window interpolates. */
export interface LoggedRange {
  readonly thicknessMm: readonly [number, number];
  readonly setpointC: readonly [number, number];
  readonly startC: readonly [number, number];
  /** share of the floor; a load that was not logged counts as a loose single layer */
  readonly loadFraction: readonly [number, number];
  /** root of the piece's plan area (mm); `null` when only uncut slabs were logged */
  readonly sideMm: readonly [number, number] | null;
  /** turned pieces were logged; so were unturned ones */
  readonly turned: boolean;
  readonly unturned: boolean;
}

/** Root of the plan area of a piece (mm). */
export function sideOf(sidesMm: readonly [number, number]): number {
  return Math.sqrt(sidesMm[0] * sidesMm[1]);
}

/** The range of what a log has tried; `null` without trials. */
export function loggedRange(observations: readonly CrispObservation[]): LoggedRange | null {
  if (observations.length === 0) return null;
  const range = (of: (seen: CrispObservation) => number): readonly [number, number] => {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const seen of observations) {
      low = Math.min(low, of(seen));
      high = Math.max(high, of(seen));
    }
    return [low, high];
  };
  const cut = observations.filter((seen) => seen.sidesMm !== null);
  const sides = cut.map((seen) => sideOf(seen.sidesMm as readonly [number, number]));
  return {
    thicknessMm: range((seen) => seen.thicknessMm),
    setpointC: range((seen) => seen.setpointC),
    startC: range((seen) => seen.startC),
    loadFraction: range((seen) => seen.loadFraction ?? LOOSE_LOAD),
    sideMm: cut.length === 0 ? null : [smallestOf(sides), largestOf(sides)],
    turned: observations.some((seen) => seen.turned),
    unturned: observations.some((seen) => !seen.turned),
  };
}
