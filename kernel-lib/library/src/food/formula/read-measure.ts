import { findUnit, isUnit } from "../../units/find-unit";
import { parseAmount } from "../../units/typed/parse-amount";
import { parseQuantity } from "../../units/typed/parse-quantity";

/** A measure as a cook or a food table writes it, taken apart. */
export interface Measure {
  readonly kind: "mass" | "volume" | "count";
  readonly amount: number;
  /** grams of one for a mass, millilitres of one for a volume, 1 for a count */
  readonly size: number;
  /** the words that say what is meant, without plural s: `["chopped"]` of a cup, `["extra", "large"]` of an egg */
  readonly words: readonly string[];
}

/**
 * Takes a measure apart: `"1 1/2 tsp"`, `"1 cup, chopped"`, `"2 large"`, `"3 lb 2 oz"`, `"1 cup + 2 tbsp"`.
 *
 * @param text a number, then a unit or a count's name, then words
 * @param where named in errors
 */
export function readMeasure(text: string, where: string): Measure {
  const { amount, rest } = parseAmount(text, where);
  const whole = wholeQuantity(text);
  if (whole !== null) return { ...whole, words: [] };
  const words = rest
    .toLowerCase()
    .split(/[\s,]+/)
    .filter(Boolean);
  for (let count = Math.min(3, words.length); count > 0; count -= 1) {
    const name = words.slice(0, count).join(" ");
    if (!isUnit(name)) continue;
    const unit = findUnit(name, where);
    if (unit.kind !== "mass" && unit.kind !== "volume") break;
    return { kind: unit.kind, amount, size: unit.factor, words: plainWords(words.slice(count)) };
  }
  return { kind: "count", amount, size: 1, words: plainWords(words) };
}

function plainWords(words: readonly string[]): string[] {
  return words.map((word) => word.replace(/[()]/g, "").replace(/s$/, "")).filter(Boolean);
}

/** A text that is a mass or a volume from end to end, compound ones in their first unit; `null` for any other. */
function wholeQuantity(text: string): Omit<Measure, "words"> | null {
  try {
    const { kind, amount, unit } = parseQuantity(text);
    return kind === "mass" || kind === "volume" ? { kind, amount, size: findUnit(unit, "readMeasure").factor } : null;
  } catch {
    return null;
  }
}
