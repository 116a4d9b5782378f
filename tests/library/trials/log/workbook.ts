import { type CellObject, utils, write } from "xlsx";

/** A cell: a text, a number, or a number with its format, its formula or as an error of the sheet. */
type Cell = string | number | null | { readonly v: number; readonly z?: string; readonly f?: string; readonly t?: "e" };

/** The bytes of a workbook as a spreadsheet program would store it. */
export function workbook(options: {
  readonly sheets: Readonly<Record<string, readonly (readonly Cell[])[]>>;
  readonly merged?: readonly string[];
  /** rows as the sheet counts them */
  readonly hiddenRows?: readonly number[];
  readonly is1904?: boolean;
}): Uint8Array {
  const book = utils.book_new();
  for (const [name, rows] of Object.entries(options.sheets)) {
    const cells = rows.map((row) =>
      row.map((cell) => (typeof cell === "object" && cell !== null ? ({ t: "n", ...cell } as CellObject) : cell)),
    );
    const sheet = utils.aoa_to_sheet(cells);
    if (book.SheetNames.length === 0) {
      sheet["!merges"] = (options.merged ?? []).map((range) => utils.decode_range(range));
      const hidden = options.hiddenRows ?? [];
      sheet["!rows"] = rows.map((_, at) => ({ hidden: hidden.includes(at + 1) }));
    }
    utils.book_append_sheet(book, sheet, name);
  }
  book.Workbook = { WBProps: { date1904: options.is1904 ?? false } };
  return new Uint8Array(write(book, { type: "array", bookType: "xlsx" }) as ArrayBuffer);
}
