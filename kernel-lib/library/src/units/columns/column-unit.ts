import { fail } from "../../check/check";
import { ownValue } from "../../check/own-value";
import { findUnit, isUnit } from "../find-unit";
import type { UnitKind } from "../unit-table";

/** A column heading taken apart: what it holds and the unit it names. */
export interface ColumnUnit {
  /** heading without its unit: `"thickness"` */
  readonly name: string;
  /** unit in this library's spelling: `"in"` */
  readonly unit: string;
  readonly kind: UnitKind;
}

/** Unit endings of column headings whose spelling differs from the unit's name. */
const ENDING: Readonly<Record<string, string>> = { k: "K", degc: "°C", degf: "°F", c: "°C", f: "°F", floz: "fl oz" };

/**
 * Reads the unit that ends a column heading: `thickness_in`, `setpoint_f`, `batch_lb`.
 *
 * @param heading lower-case words joined by underscores, the last one a unit
 * @returns the name without the unit, the unit, and its kind
 * @example
 * columnUnit("setpoint_f").unit; // → "°F"
 * columnUnit("thickness"); // throws "must end in a unit"
 */
export function columnUnit(heading: string): ColumnUnit {
  const at = heading.lastIndexOf("_");
  const ending = heading.slice(at + 1).toLowerCase();
  const written = ownValue(ENDING, ending) ?? ending;
  if (at < 1 || !isUnit(written)) {
    fail("columnUnit: heading", 'must end in a unit, such as "thickness_mm" or "setpoint_f"', heading);
  }
  const unit = findUnit(written, "columnUnit: heading");
  return Object.freeze({ name: heading.slice(0, at), unit: unit.name, kind: unit.kind });
}
