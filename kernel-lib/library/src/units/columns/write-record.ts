import { fail } from "../../check/check";
import { failAll } from "../../check/csv";
import { convertUnit } from "../convert-unit";
import { findUnit } from "../find-unit";
import { KITCHEN_UNIT, type UnitKind } from "../unit-table";
import type { ColumnPlan, ColumnPlans } from "./column-plan";
import { matchColumns } from "./match-columns";

/** What `writeRecord` works from. */
export interface WriteRecordOptions<T> {
  readonly record: T;
  /** headings of the file, which name the units that its numbers are in */
  readonly headings: readonly string[];
  /** named in errors */
  readonly file: string;
  readonly plans: ColumnPlans<T>;
}

/**
 * Writes a record as one line of a CSV file, in the file's own columns and units: what `readRecords` reads back. A number
 * is written to the digits that matter, a hundredth of a gram, millimetre, minute or degree, and reads back to within
 * half of its last digit.
 * Throws when the record holds something that the file has no column for.
 */
export function writeRecord<T>(options: WriteRecordOptions<T>): string {
  const { record, headings, file, plans } = options;
  const { headingOf, strange } = matchColumns({ headings, plans });
  failAll(strange.map(({ heading, expected }) => `${file}, column ${heading}: expected ${expected}`));
  const cells = new Map<string, string>();
  for (const [field, plan] of Object.entries(plans) as [keyof T & string, ColumnPlan][]) {
    const value = record[field] as string | number | null | readonly (string | number)[];
    const values = value === null ? [] : [value].flat();
    const found = headingOf[field];
    if (found === undefined && values.length > 0)
      fail(`${file}: column ${plan.column}`, "must exist, as the record holds it", value);
    if (found !== undefined)
      cells.set(found.heading, values.map((one) => written(one as string | number, plan, found.unit)).join(";"));
  }
  return headings.map((heading) => quoted(cells.get(heading) ?? "")).join(",");
}

/**
 * The smallest difference that is written, in kitchen units. A hundredth of a millimetre, gram, minute or degree is finer
 * than a kitchen's instruments show (common practice, no source), so that what one of them showed to two decimals comes
 * through a log in other units and back as it was.
 */
const STEP = 0.01;

function written(value: string | number, plan: ColumnPlan, unit: string | null): string {
  if (typeof value === "string") return value;
  if (unit === null) return toStep(value, STEP);
  const inUnit = convertUnit({ value, from: KITCHEN_UNIT[plan.holds as UnitKind], to: unit });
  return toStep(inUnit, STEP / findUnit(unit, "writeRecord: unit").factor);
}

/** A number to the first decimal place that is no coarser than the step, without zeros at its end. */
function toStep(value: number, step: number): string {
  return String(Number(value.toFixed(Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)))));
}

function quoted(cell: string): string {
  return /[",\n#]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
