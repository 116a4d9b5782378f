import { fail } from "../check/check";
import { parseQuantity } from "./typed/parse-quantity";
import type { UnitKind } from "./unit-table";

function read(name: string, kind: UnitKind, example: string, text: string): number {
  const quantity = parseQuantity(text);
  if (quantity.kind !== kind) fail(`${name}: text`, `must be ${example}`, `${text} (a ${quantity.kind})`);
  return quantity.kitchenValue;
}

/**
 * A length as a cook writes it, in millimetres.
 *
 * @example
 * millimetres("1/4 in"); // → 6.35
 * millimetres("1 lb"); // throws "must be a length"
 */
export function millimetres(text: string): number {
  return read("millimetres", "length", 'a length such as "1/4 in"', text);
}

/**
 * A mass as a cook writes it, in grams. A volume is refused: the mass of a cup depends on the food (see `gramsOf`).
 *
 * @example
 * grams("3 lb 2 oz"); // → 1417.476
 * grams("1 cup"); // throws "must be a mass"
 */
export function grams(text: string): number {
  return read("grams", "mass", 'a mass such as "250 g" or "3 lb 2 oz"', text);
}

/**
 * A volume as a cook writes it, in millilitres; a cup is the US customary cup.
 *
 * @example
 * millilitres("1 cup + 2 tbsp"); // → 266.162
 */
export function millilitres(text: string): number {
  return read("millilitres", "volume", 'a volume such as "1 1/2 tsp"', text);
}

/**
 * A time as a cook writes it, in minutes.
 *
 * @example
 * minutes("1 h 15 min"); // → 75
 */
export function minutes(text: string): number {
  return read("minutes", "time", 'a time such as "12 min" or "1 h 15 min"', text);
}

/**
 * A temperature as a cook writes it, in °C. For a difference of temperatures use `kelvinDifference`.
 *
 * @example
 * celsius("165 F"); // → 73.889
 */
export function celsius(text: string): number {
  return read("celsius", "temperature", 'a temperature such as "200 °C" or "400 °F"', text);
}

/**
 * A difference of temperatures, in K: write `"18 °F difference"` or `"10 K"`. A plain `"18 °F"` is a temperature and
 * is refused.
 *
 * @example
 * kelvinDifference("18 °F difference"); // → 10
 * kelvinDifference("18 °F"); // throws "must be a temperature difference"
 */
export function kelvinDifference(text: string): number {
  return read(
    "kelvinDifference",
    "temperatureDifference",
    'a temperature difference such as "10 K" or "18 °F difference"',
    text,
  );
}

/**
 * An energy, in kcal (1 kcal = 4.184 kJ).
 *
 * @example
 * kilocalories("418.4 kJ"); // → 100
 */
export function kilocalories(text: string): number {
  return read("kilocalories", "energy", 'an energy such as "120 kcal" or "500 kJ"', text);
}
