import type { CellObject } from "xlsx";
import type { WrittenColumn } from "./log-cells";

/** Headings and cells as the bytes of a workbook with one sheet, `trials`: numbers as numbers, days as text. */
export function xlsxBytes(columns: readonly WrittenColumn[], rows: readonly (readonly string[])[]): Uint8Array {
  const { utils, write } = require("xlsx") as typeof import("xlsx");
  const text = (v: string): CellObject => ({ t: "s", v });
  const head = columns.map(({ heading }) => text(heading));
  const body = rows.map((cells) =>
    cells.map((cell, at) => {
      if (cell === "") return null;
      const { field } = columns[at];
      const isNumber = field !== null && (field.kind !== null || field.holds === "share" || field.holds === "count");
      return isNumber && String(Number(cell)) === cell ? { t: "n", v: Number(cell) } : text(cell);
    }),
  );
  const book = utils.book_new();
  utils.book_append_sheet(book, utils.aoa_to_sheet([head, ...body]), "trials");
  return new Uint8Array(
    write(book, { type: "array", bookType: "xlsx", compression: true, bookSST: true }) as ArrayBuffer,
  );
}
