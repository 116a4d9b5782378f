import { parseQuantity } from "../../units/typed/parse-quantity";
import { readMeasure } from "../formula/read-measure";

/** A serving as a pack prints it. */
export interface Serving {
  readonly massG: number;
  /** the measure that it stands beside, `"1/4 cup"`; `null` without one */
  readonly measure: string | null;
}

/**
 * Reads the serving that a pack prints its values for: `30 g`, `1 oz`, `1/4 cup (30 g)`, `2 tbsp (1.1 oz / 32 g)`,
 * `30 g (1/4 cup)`. A bare number is in `unit`.
 *
 * @param unit of a bare number: that of the heading, or grams
 * @returns `null` when no mass is in it
 */
export function readServing(text: string, unit: string | null): Serving | null {
  if (text.length > 100) return null;
  if (/^[\d./ ]+$/.test(text.trim())) return servingOf(`${text.trim()} ${unit ?? "g"}`, null);
  const parts = text
    .split(/[()[\]|]|,\s|(?<=[a-z.])\s?\/\s?/i)
    .map((part) => part.trim().replace(/^(?:about|approx\.?|~)\s*/i, ""))
    .filter((part) => part !== "");
  const masses = parts.filter((part) => massOf(part) !== null);
  // grams are printed to more digits than ounces
  const mass = masses.find((part) => /\d ?g(?:rams?)?$/i.test(part)) ?? masses[0];
  return mass === undefined ? null : servingOf(mass, parts.find((part) => isMeasure(part)) ?? null);
}

function servingOf(mass: string, measure: string | null): Serving | null {
  const massG = massOf(mass);
  return massG === null ? null : { massG, measure };
}

function massOf(text: string): number | null {
  try {
    const { kind, kitchenValue } = parseQuantity(text);
    return kind === "mass" && kitchenValue > 0 ? kitchenValue : null;
  } catch {
    return null;
  }
}

function isMeasure(text: string): boolean {
  try {
    const { kind, amount, words } = readMeasure(text, "serving");
    return amount > 0 && (kind === "volume" || (kind === "count" && words.length > 0));
  } catch {
    return false;
  }
}
