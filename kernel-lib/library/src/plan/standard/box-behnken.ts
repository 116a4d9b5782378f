import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { CodedPoint } from "../factor/factor";

/** Which Box-Behnken plan. */
export interface BoxBehnkenOptions {
  /** 3 to 7 */
  readonly factors: number;
  /** centre points; 3 for 3 and 4 factors and 6 for more, unless given */
  readonly centres?: number;
}

/** Factors that move together, counted from 0: incomplete block designs of Box & Behnken (1960), table 4 (from memory). */
const MOVED: Readonly<Record<number, readonly (readonly number[])[]>> = {
  3: pairsOf(3),
  4: pairsOf(4),
  5: pairsOf(5),
  6: [
    [0, 1, 3],
    [1, 2, 4],
    [2, 3, 5],
    [0, 3, 4],
    [1, 4, 5],
    [0, 2, 5],
  ],
  7: [
    [3, 4, 5],
    [0, 5, 6],
    [1, 4, 6],
    [0, 1, 3],
    [2, 3, 6],
    [0, 2, 4],
    [1, 2, 5],
  ],
};

/**
 * A Box-Behnken plan for a full quadratic: three levels a factor, and no corner, where everything is extreme at once. Each block
 * moves two factors (three, from 6 factors on) through ±1 while the others rest at 0.
 *
 * @param options factors, centre points
 * @returns points in coded units, centres last: 15, 27, 46, 54, 62 for 3 to 7 factors
 * @example
 * boxBehnken({ factors: 3 }).length; // → 15
 * boxBehnken({ factors: 3 })[1]; // → [1, -1, 0]
 *
 * Reference: Box & Behnken (1960), Technometrics 2, 455.
 */
export function boxBehnken({ factors, centres = factors < 5 ? 3 : 6 }: BoxBehnkenOptions): readonly CodedPoint[] {
  if (!Object.hasOwn(MOVED, factors)) fail("boxBehnken: factors", "must be a whole number from 3 to 7", factors);
  if (!(Number.isInteger(centres) && centres >= 1 && centres <= 1000))
    fail(
      "boxBehnken: centres",
      "must be a whole number from 1 to 1000, as the quadratic cannot be told without",
      centres,
    );
  const moved = MOVED[factors].flatMap((together) =>
    Array.from({ length: 2 ** together.length }, (_, run) => {
      const point = Array.from({ length: factors }, () => 0);
      for (const [at, factor] of together.entries()) point[factor] = run & (1 << at) ? 1 : -1;
      return point;
    }),
  );
  const rest = Array.from({ length: centres }, () => Array.from({ length: factors }, () => 0));
  return freezeDeep([...moved, ...rest]);
}

function pairsOf(factors: number): readonly (readonly number[])[] {
  const all = Array.from({ length: factors }, (_, at) => at);
  return all.flatMap((one) => all.slice(one + 1).map((other) => [one, other]));
}
