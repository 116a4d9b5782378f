import { fail, notNegative } from "../../check/check";
import type { HouseholdWeight, Ingredient } from "../ingredient/ingredient";
import { type Measure, readMeasure } from "./read-measure";

/** A mass, and how it was come by. */
export interface MeasuredMass {
  readonly massG: number;
  readonly by: "scale" | "household measure";
  /** `"weighed"`, or the household weight it rests on with its source */
  readonly how: string;
}

/** What `gramsOf` needs to know of a food. */
export type MeasuredFood = Pick<Ingredient, "name" | "householdWeights">;

/**
 * Grams of a food from what a cook writes: a weight is converted, a volume or a count is looked up in the food's own
 * household weights (the one whose measure lies nearest in size). There is no default density: a volume of a food
 * without a household weight is an error.
 *
 * m = V · (m_household / V_household)
 *
 * @param food name and household weights, such as an `Ingredient`
 * @param amount `"250 g"`, `"3 lb 2 oz"`, `"1 1/2 tsp"`, `"1 cup chopped"`, `"2 large"`
 * @returns mass (g) and how it was come by
 * @example
 * const salt = { name: "fine salt", householdWeights: [{ measure: "1 tsp", massG: 6, source: "USDA SR28 (2015)" }] };
 * gramsOf(salt, "1 1/2 tsp").massG; // → 9
 * gramsOf(salt, "1 1/2 tsp").how; // → "1 1/2 tsp at 6 g for 1 tsp (USDA SR28 (2015))"
 * gramsOf(salt, "1 pinch"); // throws "weigh it"
 */
export function gramsOf(food: MeasuredFood, amount: string): MeasuredMass {
  const where = `gramsOf: amount of ${food.name}`;
  const wanted = readMeasure(amount, where);
  notNegative(wanted.amount * wanted.size, where, "");
  if (wanted.kind === "mass") {
    if (wanted.words.length > 0) fail(where, 'must be a mass alone, such as "250 g"', amount);
    return Object.freeze({ massG: wanted.amount * wanted.size, by: "scale", how: "weighed" });
  }
  const candidates = food.householdWeights
    .map((weight) => candidateOf(weight, wanted, food.name))
    .filter((one) => one !== null)
    .sort((a, b) => a.sizeGap - b.sizeGap || a.extraWords - b.extraWords);
  if (candidates.length === 0) fail(where, mustWhenNone(food, wanted), amount);
  const best = candidates[0];
  const alike = candidates.filter((one) => one.sizeGap === best.sizeGap && one.extraWords === best.extraWords);
  if (alike.some((one) => Math.abs(one.perSize / best.perSize - 1) > 0.1)) {
    const choices = alike.map(
      ({ weight }) => `"${amount.trim()} ${readMeasure(weight.measure, where).words.join(" ")}"`,
    );
    fail(where, `must say which measure is meant: ${choices.join(" or ")}`, amount);
  }
  const massG = wanted.amount * wanted.size * best.perSize;
  const how = `${amount.trim()} at ${best.weight.massG} g for ${best.weight.measure} (${best.weight.source})`;
  return Object.freeze({ massG, by: "household measure", how });
}

/** A household weight that answers what is wanted, and how nearly. */
interface Candidate {
  readonly weight: HouseholdWeight;
  /** grams per millilitre, or per piece of a count */
  readonly perSize: number;
  /** how far its unit's size lies from the wanted one: a spoon is better measured by a spoon than by a cup */
  readonly sizeGap: number;
  /** words it says beyond those wanted: `"1 cup"` means a plain cup before a chopped one */
  readonly extraWords: number;
}

function candidateOf(weight: HouseholdWeight, wanted: Measure, foodName: string): Candidate | null {
  const measure = readMeasure(weight.measure, `household weight of ${foodName}`);
  if (measure.kind !== wanted.kind) return null;
  const anyPiece = wanted.kind === "count" && (wanted.words.length === 0 || wanted.words[0] === "each");
  const said = anyPiece ? [] : wanted.words;
  if (!said.every((word) => measure.words.includes(word))) return null;
  if (wanted.kind === "count" && said.length > 0 && said[0] !== measure.words[0]) return null;
  return {
    weight,
    perSize: weight.massG / (measure.amount * measure.size),
    sizeGap: wanted.kind === "volume" ? Math.abs(Math.log(measure.size / wanted.size)) : 0,
    extraWords: anyPiece ? 0 : measure.words.length - said.length,
  };
}

function mustWhenNone(food: MeasuredFood, wanted: Measure): string {
  const known = food.householdWeights.map((weight) => `${weight.measure} = ${weight.massG} g`).join("; ");
  const way =
    wanted.kind === "count" ? "weigh it" : 'weigh it, or add a household weight for it (a density is one: "1 mL")';
  return known
    ? `must be a mass or one of its known measures (${known}); otherwise ${way}`
    : `must be a mass, as no household weight is known: ${way}`;
}
