import { fail, finite } from "../check/check";
import { findUnit } from "./find-unit";

/** What `convertUnit` takes. */
export interface ConvertUnitOptions {
  /** the number to convert, in `from` units */
  readonly value: number;
  /** unit of `value`: `"in"`, `"lb"`, `"°F"`, `"°F difference"` */
  readonly from: string;
  /** unit wanted, of the same kind */
  readonly to: string;
}

/**
 * Converts a number between two units of one kind (definitions in NIST Special Publication 811).
 *
 * y = ((x - offset_from) factor_from) / factor_to + offset_to; the offsets are zero except for °F.
 *
 * A temperature does not convert to a temperature difference, nor a mass to a volume: the first is a category error,
 * the second needs the food (see `gramsOf`).
 *
 * @param options value and the two units
 * @returns the number in `to` units
 * @example
 * convertUnit({ value: 0.25, from: "in", to: "mm" }); // → 6.35
 * convertUnit({ value: 400, from: "°F", to: "°C" }); // → 204.444
 * convertUnit({ value: 18, from: "°F difference", to: "K" }); // → 10
 * convertUnit({ value: 1, from: "cup", to: "g" }); // throws "of one kind"
 */
export function convertUnit(options: ConvertUnitOptions): number {
  const { value } = options;
  finite(value, "convertUnit: value", options.from);
  const from = findUnit(options.from, "convertUnit: from");
  const to = findUnit(options.to, "convertUnit: to");
  if (from.kind !== to.kind) {
    fail(
      "convertUnit: from and to",
      "must be units of one kind",
      `${from.name} (${from.kind}) and ${to.name} (${to.kind})`,
    );
  }
  return ((value - from.offset) * from.factor) / to.factor + to.offset;
}
