/**
 * Rows as CSV (RFC 4180): lines end in CR LF, and a cell with a comma, a quote or a line end stands in quotes, its quotes
 * doubled.
 *
 * A cell is data. A spreadsheet program would run one that begins with = + - or @ as a formula, also one that came in with a
 * colleague's names and notes, so an apostrophe goes before it, which such programs read as "this is text". A signed
 * number, alone or with a unit and a range in brackets, cannot be run and stays as it is; its true minus becomes a hyphen, so
 * that it is read as a number.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(",")}\r\n`).join("");
}

const SIGNED = /^[+-]\d[\d.,]*(?:\s?[\p{L}%°/²³·]{1,12})?(?:\s?\([\p{L}\d\s.,:%°/+−-]*\))?$/u;

function csvCell(cell: string): string {
  const text = cell.replace(/^−(?=\d)/, "-");
  const safe = /^[\s]*[=+\-@]/.test(text) && !SIGNED.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
