import type { KitchenUnits } from "../unit-table";
import { columnUnit } from "./column-unit";
import { wordsOf } from "./words-of";

/** Units as the headings of a kitchen's files speak of them. */
export interface GuessedUnits {
  readonly units: KitchenUnits;
  /** how many headings name a unit of the one kind or the other, and how many of them the one that was taken */
  readonly of: number;
  readonly taken: number;
}

const US: ReadonlySet<string> = new Set(["in", "ft", "in²", "oz", "lb", "°F"]);
const METRIC: ReadonlySet<string> = new Set(["mm", "cm", "m", "cm²", "g", "kg", "°C"]);

/**
 * The units that most headings of a kitchen's files name: inches, ounces, pounds and °F, or else metric ones. Minutes, and
 * headings without a unit, say nothing. Metric when both are as many.
 *
 * @example
 * guessUnits(["depth_in", "batch_lb", "setpoint_f", "before_g", "time_min"]).units; // → "us"
 */
export function guessUnits(headings: readonly string[]): GuessedUnits {
  const units = headings.map(unitOf);
  const us = units.filter((unit) => US.has(unit)).length;
  const metric = units.filter((unit) => METRIC.has(unit)).length;
  return { units: us > metric ? "us" : "metric", of: us + metric, taken: Math.max(us, metric) };
}

function unitOf(heading: string): string {
  try {
    return columnUnit(wordsOf(heading)).unit;
  } catch {
    return "";
  }
}
