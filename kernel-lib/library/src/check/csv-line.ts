/** Cells as one line of a file whose cells a delimiter parts (RFC 4180), without its line end. */
export function csvLine(cells: readonly string[], delimiter: string): string {
  return cells.map((cell) => (needsQuotes(cell, delimiter) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(delimiter);
}

function needsQuotes(cell: string, delimiter: string): boolean {
  return cell !== "" && (/["\n\r#]/.test(cell) || cell.includes(delimiter) || cell.trim() !== cell);
}
