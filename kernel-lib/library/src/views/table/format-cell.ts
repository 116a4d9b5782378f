import type { Column } from "./table";

/**
 * One cell as a person reads it: numbers with the column's decimals, or else up to four significant digits; a dash for
 * what is not known.
 *
 * @example
 * formatCell(12.3456, { heading: "mass (g)", decimals: 1 }); // → "12.3"
 * formatCell(null, { heading: "mass (g)" }); // → "–"
 */
export function formatCell(cell: string | number | null, column: Column): string {
  if (cell === null) return "–";
  if (typeof cell === "string") return cell;
  if (!Number.isFinite(cell)) return String(cell);
  return column.decimals === undefined ? String(Number(cell.toPrecision(4))) : cell.toFixed(column.decimals);
}
