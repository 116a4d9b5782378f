import { fail, notNegative } from "../check/check";
import { findUnit, isUnit } from "../units/find-unit";
import { parseAmount } from "../units/parse-amount";
import { parseQuantity } from "../units/parse-quantity";
import type { HouseholdWeight, Ingredient } from "./ingredient";

/** A mass, and how it was come by. */
export interface MeasuredMass {
  readonly massG: number;
  /** `"weighed"`, or the household weight it rests on with its source */
  readonly how: string;
}

/** What `gramsOf` needs to know of a food. */
export type MeasuredFood = Pick<Ingredient, "name" | "householdWeights">;

interface Measure {
  readonly amount: number;
  /** millilitres of one measure; `null` for a count such as `"large"` or `"slice"` */
  readonly eachMl: number | null;
  /** the words of a count, the unit of a volume */
  readonly unit: string;
  /** what follows: `"chopped"`, `"packed"` */
  readonly note: string;
}

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
  notNegative(wanted.amount, where, "");
  const mass = massOnly(amount);
  if (mass !== null) return Object.freeze({ massG: mass, how: "weighed" });
  const candidates = food.householdWeights
    .map((weight) => ({ weight, measure: readMeasure(weight.measure, `household weight of ${food.name}`) }))
    .filter(({ measure }) => sameKind(wanted, measure) && noteFits(wanted.note, measure.note));
  if (candidates.length === 0) fail(where, mustWhenNone(food, wanted), amount);
  const best = nearest(candidates, wanted);
  for (const other of candidates) {
    const differs = Math.abs(perUnit(other) / perUnit(best) - 1) > 0.1;
    if (sizeGap(other.measure, wanted) === sizeGap(best.measure, wanted) && differs) {
      fail(
        where,
        `must say which measure is meant: ${candidates.map((one) => one.weight.measure).join(" or ")}`,
        amount,
      );
    }
  }
  const times = wanted.eachMl === null ? wanted.amount : wanted.amount * wanted.eachMl;
  const massG = times * perUnit(best);
  const how = `${amount.trim()} at ${best.weight.massG} g for ${best.weight.measure} (${best.weight.source})`;
  return Object.freeze({ massG, how });
}

interface Candidate {
  readonly weight: HouseholdWeight;
  readonly measure: Measure;
}

/** Grams per millilitre, or per piece of a count. */
function perUnit({ weight, measure }: Candidate): number {
  return weight.massG / (measure.amount * (measure.eachMl ?? 1));
}

function sizeGap(measure: Measure, wanted: Measure): number {
  return measure.eachMl === null ? 0 : Math.abs(Math.log(measure.eachMl / wanted.eachMl!));
}

function nearest(candidates: readonly Candidate[], wanted: Measure): Candidate {
  return candidates.reduce((best, one) => (sizeGap(one.measure, wanted) < sizeGap(best.measure, wanted) ? one : best));
}

function sameKind(wanted: Measure, measure: Measure): boolean {
  if (wanted.eachMl !== null) return measure.eachMl !== null;
  if (measure.eachMl !== null) return false;
  return wanted.unit === "" || wanted.unit === "each" || singular(wanted.unit) === singular(measure.unit);
}

function noteFits(wanted: string, note: string): boolean {
  return wanted === "" || note.includes(wanted);
}

function singular(words: string): string {
  return words.replace(/s$/, "");
}

function massOnly(amount: string): number | null {
  const first = parseAmount(amount, "gramsOf: amount").rest.split(/[\s\d]/)[0];
  if (!isUnit(first) || findUnit(first, "gramsOf").kind !== "mass") return null;
  return parseQuantity(amount).kitchenValue;
}

function readMeasure(text: string, where: string): Measure {
  const { amount, rest } = parseAmount(text, where);
  const words = rest
    .toLowerCase()
    .split(/[\s,]+/)
    .filter(Boolean);
  for (let count = Math.min(3, words.length); count > 0; count -= 1) {
    const name = words.slice(0, count).join(" ");
    if (!isUnit(name)) continue;
    const unit = findUnit(name, where);
    if (unit.kind === "mass") return { amount, eachMl: null, unit: unit.name, note: "" };
    if (unit.kind !== "volume") break;
    if (/\d/.test(rest)) {
      const whole = wholeVolume(text);
      if (whole !== null) return { amount: 1, eachMl: whole, unit: unit.name, note: "" };
    }
    return { amount, eachMl: unit.factor, unit: unit.name, note: words.slice(count).join(" ") };
  }
  const head = rest.toLowerCase().split(/[,(]/)[0].trim();
  return {
    amount,
    eachMl: null,
    unit: head,
    note: rest
      .toLowerCase()
      .slice(head.length)
      .replace(/^[\s,]+/, ""),
  };
}

/** Millilitres of a compound volume such as `"1 cup + 2 tbsp"`; `null` when the text is something else. */
function wholeVolume(text: string): number | null {
  try {
    const quantity = parseQuantity(text);
    return quantity.kind === "volume" ? quantity.kitchenValue : null;
  } catch {
    return null;
  }
}

function mustWhenNone(food: MeasuredFood, wanted: Measure): string {
  const known = food.householdWeights.map((weight) => `${weight.measure} = ${weight.massG} g`).join("; ");
  const way =
    wanted.eachMl === null ? "weigh it" : 'weigh it, or add a household weight for it (a density is one: "1 mL")';
  return known
    ? `must be a mass or one of its known measures (${known}); otherwise ${way}`
    : `must be a mass, as no household weight is known: ${way}`;
}
