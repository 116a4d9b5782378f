import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { CodedPoint } from "../factor/factor";

/** A grid of runs. */
export interface FullFactorialOptions {
  /** how many levels each factor has: `[2, 2, 3]` */
  readonly levels: readonly number[];
}

/** The most points that a grid may hold: our judgement. */
const MOST = 1_000_000;

/**
 * Every combination of every factor's levels, the levels evenly spaced from −1 to 1: Π levels runs, the first factor changing
 * fastest (Yates' standard order). Also a grid of candidates for `optimalDesign`: filter it to what is allowed.
 *
 * @param options levels of each factor, 2 or more; at most a million runs
 * @returns points in coded units
 * @example
 * fullFactorial({ levels: [2, 3] }); // → [[-1, -1], [1, -1], [-1, 0], [1, 0], [-1, 1], [1, 1]]
 *
 * Reference: Yates (1937), The design and analysis of factorial experiments (from memory).
 */
export function fullFactorial({ levels }: FullFactorialOptions): readonly CodedPoint[] {
  const where = "fullFactorial: levels";
  if (levels.length === 0) fail(where, "must hold at least one factor", levels);
  for (const count of levels)
    if (!(Number.isInteger(count) && count >= 2))
      fail(where, "must be whole numbers >= 2, as a factor at one level tells nothing", count);
  const runs = levels.reduce((product, count) => product * count, 1);
  if (runs > MOST) fail(where, `must give at most ${MOST} runs: take fewer factors or levels`, runs);
  return freezeDeep(
    Array.from({ length: runs }, (_, run) => {
      let rest = run;
      return levels.map((count) => {
        const level = rest % count;
        rest = Math.floor(rest / count);
        return (2 * level - (count - 1)) / (count - 1);
      });
    }),
  );
}
