/** One column of a `Table`. */
export interface Column {
  /** heading, with its unit where it has one: `"thickness (mm)"` */
  readonly heading: string;
  /** digits after the point for numbers; left out, numbers print with up to four significant digits */
  readonly decimals?: number;
}

/** A table as plain data: every table of the library is one, and `frameOf` turns it into a danfojs frame. */
export interface Table {
  readonly kind: "table";
  readonly title: string;
  readonly columns: readonly Column[];
  /** one array a row, one cell a column; `null` prints as a dash: not known, or does not apply */
  readonly rows: readonly (readonly (string | number | null)[])[];
  /** sentences under the table: sources, cautions, what the numbers rest on */
  readonly notes: readonly string[];
}
