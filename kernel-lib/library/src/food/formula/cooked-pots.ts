import { fail } from "../../check/check";
import { compositionOf } from "../composition/composition-of";
import type { Formula } from "./formula";
import { typedMassG } from "./typed-mass";
import type { WeighedLine } from "./weigh-lines";

/** Lines of a mix that were cooked down together, and what that left. */
export interface CookedPot {
  /** its name in the formula; `null` when the whole mix is one pot */
  readonly pot: string | null;
  /** which lines of the mix are in it */
  readonly lines: readonly number[];
  /** what went in (g) */
  readonly rawG: number;
  /** what it weighs cooked (g) */
  readonly cookedG: number;
  /** what boiled off (g): water alone */
  readonly waterLostG: number;
}

/** What `cookedPots` works from. */
export interface CookedPotsOptions {
  readonly formula: Formula;
  /** the mix in grams, line by line */
  readonly lines: readonly WeighedLine[];
}

/**
 * What each pot of a formula lost on the stove: water = what went in − what it weighs cooked.
 *
 * Throws when a pot weighs more than what went into it (water that is taken up is a line of its own), and when it lost more than
 * the water of its lines.
 */
export function cookedPots({ formula, lines }: CookedPotsOptions): readonly CookedPot[] {
  const { cookedG, mix, id } = formula;
  if (cookedG === undefined) return [];
  const isWhole = typeof cookedG !== "object";
  const masses = isWhole ? [[null, cookedG] as const] : Object.entries(cookedG);
  return Object.freeze(
    masses.map(([pot, typed]): CookedPot => {
      const where = `${id}: cookedG${pot === null ? "" : ` of ${pot}`}`;
      const inPot = mix.flatMap((line, at) => (pot === null || line.pot === pot ? [at] : []));
      const rawG = inPot.reduce((sum, at) => sum + lines[at].massG, 0);
      const massG = typedMassG(typed);
      if (massG > rawG)
        fail(
          where,
          `must be at most the ${rawG.toFixed(1)} g that went in; water that is taken up is a line of its own`,
          typed,
        );
      const waterG = inPot.reduce((sum, at) => sum + waterOf(lines[at]), 0);
      const leastG = rawG - waterG;
      if (massG < leastG)
        fail(
          where,
          `must be at least ${leastG.toFixed(1)} g, as only ${waterG.toFixed(1)} g of what went in are water`,
          typed,
        );
      return Object.freeze({ pot, lines: Object.freeze(inPot), rawG, cookedG: massG, waterLostG: rawG - massG });
    }),
  );
}

/** Water of a line (g), the smaller where the table's row does not sum to 100. */
function waterOf({ ingredient, massG }: WeighedLine): number {
  const { waterFraction } = compositionOf(ingredient.per100G, ingredient.name);
  return massG * Math.min(waterFraction, (ingredient.per100G.waterG as number) / 100);
}
