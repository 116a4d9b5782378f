import { fail } from "../../check/check";
import { findUnit, isUnit } from "../find-unit";
import type { UnitKind } from "../unit-table";
import { LONGEST_AMOUNT, parseAmount } from "./parse-amount";

/** A typed quantity: a number with its unit. */
export interface Quantity {
  readonly amount: number;
  /** the unit's name in this library: `"tsp"`, `"lb"`, `"°F"` */
  readonly unit: string;
  readonly kind: UnitKind;
  /** the same in the kitchen unit of its kind: mm, g, mL, min, kcal, °C or K */
  readonly kitchenValue: number;
}

/**
 * Reads a quantity as a cook writes it. Parts of one kind add up, with the first part's unit kept.
 *
 * @param text a number and a unit, or several: `"1 1/2 tsp"`, `"1/4 in"`, `"3 lb 2 oz"`, `"1 cup + 2 tbsp"`, `"400 °F"`
 * @returns amount, unit, kind, and the value in the kitchen unit of its kind
 * @example
 * parseQuantity("1 1/2 tsp").kitchenValue; // → 7.3934
 * parseQuantity("3 lb 2 oz").kitchenValue; // → 1417.476
 * parseQuantity("½ in").kitchenValue; // → 12.7
 * parseQuantity("2 handfuls"); // throws "must use one of the units"
 */
export function parseQuantity(text: string): Quantity {
  const where = "parseQuantity: text";
  if (text.length > LONGEST_AMOUNT) fail(where, `must have at most ${LONGEST_AMOUNT} characters`, text);
  let left = text.trim().replace(/\s+/g, " ");
  if (left === "") fail(where, 'must be a number and a unit, such as "1 1/2 tsp"', text);
  let first: { unit: string; kind: UnitKind; factor: number; offset: number } | undefined;
  let amount = 0;
  let kitchenValue = 0;
  while (left !== "") {
    const part = parseAmount(left, where);
    const [name, after] = splitUnit(part.rest);
    if (name === "") fail(where, 'must give a unit after the number, such as "250 g"', text);
    const unit = findUnit(name, where);
    if (!first) {
      first = { unit: unit.name, kind: unit.kind, factor: unit.factor, offset: unit.offset };
      amount = part.amount;
      kitchenValue = (part.amount - unit.offset) * unit.factor;
    } else {
      if (unit.kind !== first.kind) fail(where, "must add up parts of one kind", text);
      if (unit.kind === "temperature") fail(where, "must not add temperatures", text);
      if (part.amount < 0) fail(where, "must not mix signs in one quantity", text);
      kitchenValue += part.amount * unit.factor;
      amount = kitchenValue / first.factor;
    }
    left = after.replace(/^(\+|,|and\b)\s*/i, "");
  }
  return Object.freeze({ amount, unit: first!.unit, kind: first!.kind, kitchenValue });
}

/** Splits text at the longest run of leading words that is a unit; otherwise at the next number. */
function splitUnit(text: string): [string, string] {
  const next = /[\s+,]*(?:\+|\band\b|[\d½⅓⅔¼¾⅛⅜⅝⅞])/i.exec(text);
  const head = next ? text.slice(0, next.index) : text;
  const words = head.trim().split(/\s+/);
  for (let count = words.length; count > 0; count -= 1) {
    const name = words.slice(0, count).join(" ");
    if (isUnit(name)) return [name, text.slice(text.indexOf(name) + name.length).trim()];
  }
  return [head.trim(), next ? text.slice(next.index).trim() : ""];
}
