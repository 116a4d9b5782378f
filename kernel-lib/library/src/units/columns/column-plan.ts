import type { UnitKind } from "../unit-table";

/** How one field of a record is written in a CSV file. */
export interface ColumnPlan {
  /** heading, without a unit: `"thickness"` */
  readonly column: string;
  /** text, an id, a bare number, or a quantity whose heading ends in its unit (`thickness_mm`, `thickness_in`) */
  readonly holds: "text" | "id" | "number" | UnitKind;
  /** several values in one cell, parted by semicolons: the field is an array */
  readonly many?: boolean;
  /** other headings that mean the same, without a unit, words joined by underscores */
  readonly also?: readonly string[];
  /** the words that a cell may hold, each with others that mean the same; capitals, blanks and hyphens count for nothing */
  readonly among?: Readonly<Record<string, readonly string[]>>;
  /** what stands for a cell that is empty or a column that is not there; left out: nothing, which the schema may refuse */
  readonly whenEmpty?: WhenEmpty;
}

/** What stands for a cell that is empty. */
export interface WhenEmpty {
  /** in kitchen units, from what else the row holds */
  readonly value: (fields: Readonly<Record<string, unknown>>) => unknown;
  /** what is said of it, where it matters: `"-18 °C (0 °F) was taken, straight from the freezer"` */
  readonly says?: string;
}

/** The columns of a CSV file, by field of the record. */
export type ColumnPlans<T> = { readonly [Field in keyof T]-?: ColumnPlan };

/** A name for what has an id and no name: the id's words. */
export function nameFromId(idField: string): WhenEmpty {
  return { value: (fields) => String(fields[idField] ?? "").replace(/[-_]+/g, " ") || null };
}
