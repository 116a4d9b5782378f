import type { UnitKind } from "../unit-table";

/** How one field of a record is written in a CSV file. */
export interface ColumnPlan {
  /** heading, without a unit: `"thickness"` */
  readonly column: string;
  /** text, a bare number, or a quantity whose heading ends in its unit (`thickness_mm`, `thickness_in`) */
  readonly holds: "text" | "number" | UnitKind;
  /** several values in one cell, parted by semicolons: the field is an array */
  readonly many?: boolean;
}

/** The columns of a CSV file, by field of the record. */
export type ColumnPlans<T> = { readonly [Field in keyof T]-?: ColumnPlan };
