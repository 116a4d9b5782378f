import { convertUnit } from "../../units/convert-unit";
import { massText } from "../../units/mass-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Table } from "./table";

type Cell = string | number | null;

/** How the numbers of a column in each metric unit read in a US kitchen; texts tell their unit themselves. */
const US: Readonly<Record<string, { readonly heading: string; readonly cell: (value: number) => Cell }>> = {
  mm: { heading: "", cell: (mm) => thicknessWords(mm, "us") },
  g: { heading: "", cell: (massG) => `${massG < 0 ? "−" : ""}${massText(Math.abs(massG), "us")}` },
  "°C": { heading: " (°F)", cell: (value) => convertUnit({ value, from: "°C", to: "°F" }) },
};

/**
 * A table in millimetres, grams and °C, in a kitchen's own units: the numbers of a column whose heading ends in `(mm)` or
 * `(g)` become texts with inches or pounds and ounces first, those under `(°C)` become °F.
 *
 * @param table as it was made, in metric units
 * @param units the kitchen's own; a metric kitchen gets the table back
 */
export function tableIn(table: Table, units: KitchenUnits): Table {
  if (units === "metric") return table;
  const own = table.columns.map(({ heading }) => {
    const unit = / \((mm|g|°C)\)$/.exec(heading)?.[1];
    return unit === undefined ? null : { unit, ...US[unit] };
  });
  return {
    ...table,
    columns: table.columns.map((column, at) => {
      const unit = own[at];
      return unit === null ? column : { ...column, heading: column.heading.replace(` (${unit.unit})`, unit.heading) };
    }),
    rows: table.rows.map((row) =>
      row.map((cell, at) => (typeof cell === "number" ? (own[at]?.cell(cell) ?? cell) : cell)),
    ),
  };
}
