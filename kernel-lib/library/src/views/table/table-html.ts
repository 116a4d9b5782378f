import { escapeHtml } from "./escape-html";
import { formatCell } from "./format-cell";
import type { Table } from "./table";

const LINE_LENGTH = 30;

/** A table as HTML with a caption and every text escaped; wide tables scroll inside their own box. */
export function tableHtml(table: Table): string {
  const toRight = table.columns.map((_, at) => table.rows.some((row) => typeof row[at] === "number"));
  const align = (at: number): string => (toRight[at] ? ' style="text-align:right"' : ' style="text-align:left"');
  const head = table.columns
    .map((column, at) => `<th scope="col"${align(at)}>${escapeHtml(column.heading)}</th>`)
    .join("");
  const body = table.rows
    .map(
      (row) =>
        `<tr>${row.map((cell, at) => `<td${align(at)}>${escapeHtml(keptTogether(formatCell(cell, table.columns[at])))}</td>`).join("")}</tr>`,
    )
    .join("\n");
  const notes = table.notes.map((note) => `<p class="note">${escapeHtml(note)}</p>`).join("\n");
  return `<div style="overflow-x:auto"><table><caption>${escapeHtml(table.title)}</caption><thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody></table></div>\n${notes}`;
}

/** Hard spaces, so that a narrow page scrolls the table sideways and breaks long cells into lines of some length only. */
function keptTogether(text: string): string {
  let length = 0;
  return text.replace(/\S+| /g, (part) => {
    length += part.length;
    if (part !== " ") return part;
    if (length < LINE_LENGTH) return "\u00a0";
    length = 0;
    return " ";
  });
}
