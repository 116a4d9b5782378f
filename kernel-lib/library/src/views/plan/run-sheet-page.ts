import type { RunSheet } from "../../advice/run-sheet/run-sheet";
import { benchSheetParts } from "../log/bench-sheet-html";
import { SHEET_STYLE } from "../log/bench-sheet-page";
import { escapeHtml } from "../table/escape-html";
import { tableHtml } from "../table/table-html";
import { runSheetTable } from "./run-sheet-table";

/** The overview holds more columns than a bench sheet, and no blanks. */
const STYLE = `${SHEET_STYLE}
section.overview th:first-child { width: auto; }
section.overview table { table-layout: auto; }
section.overview td, section.overview th { font-size: 8.5pt; padding: 1.2mm; overflow-wrap: normal; }`;

/**
 * A run sheet as a page of its own, to print on A4 or Letter: for every morning its trials in their turn, then two trials a sheet with
 * blanks; cautions on each, nothing from elsewhere in it.
 */
export function runSheetPage(run: RunSheet): string {
  const title = escapeHtml(`${run.kitchenName}: plan ${run.name}`);
  const mornings = [...new Set(run.lines.map(({ session }) => session))];
  const sections = mornings.flatMap((morning) => {
    const places = run.sheet.sessions.map((session, at) => (session === morning ? at : -1)).filter((at) => at >= 0);
    const own = {
      ...run.sheet,
      trialIds: places.map((at) => run.sheet.trialIds[at]),
      sessions: places.map(() => morning),
      rows: run.sheet.rows.map((row) => ({ ...row, cells: places.map((at) => row.cells[at]) })),
    };
    return [
      `<section class="overview">${tableHtml(runSheetTable(run, morning))}</section>`,
      ...benchSheetParts(own).map((part) => `<section>${part}</section>`),
    ];
  });
  return `<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>${title}</title><style>${STYLE}</style></head>\n<body>${sections.join("\n")}</body></html>\n`;
}
