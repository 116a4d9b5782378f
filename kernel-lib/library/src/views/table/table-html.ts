import { escapeHtml } from "./escape-html";
import { formatCell } from "./format-cell";
import { keepQuantities } from "./keep-quantities";
import type { Table } from "./table";

/**
 * A table as HTML with a caption and every text escaped; wide tables scroll inside their own box. Each cell that
 * holds something carries its column's heading as `data-label`, for a page that is too narrow for the columns.
 */
export function tableHtml(table: Table): string {
  const toRight = table.columns.map((_, at) => table.rows.some((row) => typeof row[at] === "number"));
  const align = (at: number): string => (toRight[at] ? ' style="text-align:right"' : ' style="text-align:left"');
  const head = table.columns
    .map((column, at) => `<th scope="col"${align(at)}>${escapeHtml(column.heading)}</th>`)
    .join("");
  const labels = table.columns.map((column) => ` data-label="${escapeHtml(column.heading)}"`);
  const cellOf = (cell: string | number | null, at: number): string => {
    const text = escapeHtml(keepQuantities(formatCell(cell, table.columns[at])));
    return `<td${cell === null ? "" : labels[at]}${align(at)}>${text}</td>`;
  };
  const body = table.rows.map((row) => `<tr>${row.map(cellOf).join("")}</tr>`).join("\n");
  const notes = table.notes.map((note) => `<p class="note">${escapeHtml(note)}</p>`).join("\n");
  return `<div style="overflow-x:auto"><table><caption>${escapeHtml(table.title)}</caption><thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody></table></div>\n${notes}`;
}
