import { fail, positive } from "../../check/check";
import { parseQuantity } from "../../units/typed/parse-quantity";

/** A mass as a cook types it: grams, or a text such as `"2 lb 3 oz"`. */
export type TypedMass = number | string;

/**
 * Grams of a mass as a cook types it: a number is grams, a text names its unit.
 *
 * @example
 * typedMassG("2 lb 3 oz"); // → 992.23
 * typedMassG("1 cup"); // throws "must be a mass"
 */
export function typedMassG(typed: TypedMass): number {
  if (typeof typed === "number") return positive(typed, "typedMassG", "g");
  const { kind, kitchenValue } = parseQuantity(typed);
  if (kind !== "mass") fail("typedMassG", "must be a mass", typed);
  return positive(kitchenValue, "typedMassG", "g");
}
