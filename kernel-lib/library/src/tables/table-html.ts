import { formatCell } from "./format-cell";
import type { Table } from "./table";

/** A table as HTML with a caption and every text escaped; wide tables scroll inside their own box. */
export function tableHtml(table: Table): string {
  const toRight = table.columns.map((_, at) => table.rows.some((row) => typeof row[at] === "number"));
  const align = (at: number): string => (toRight[at] ? ' style="text-align:right"' : ' style="text-align:left"');
  const head = table.columns
    .map((column, at) => `<th scope="col"${align(at)}>${escaped(column.heading)}</th>`)
    .join("");
  const body = table.rows
    .map(
      (row) =>
        `<tr>${row.map((cell, at) => `<td${align(at)}>${escaped(formatCell(cell, table.columns[at]))}</td>`).join("")}</tr>`,
    )
    .join("\n");
  const notes = table.notes.map((note) => `<p class="note">${escaped(note)}</p>`).join("\n");
  return `<div style="overflow-x:auto"><table><caption>${escaped(table.title)}</caption><thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody></table></div>\n${notes}`;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
