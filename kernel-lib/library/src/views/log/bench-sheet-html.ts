import type { BenchCell, BenchSheet } from "../../advice/trial/bench-sheet";
import { escapeHtml } from "../table/escape-html";
import { keepQuantities } from "../table/keep-quantities";

/** Trials side by side on one page: more leave no room to write. */
const ON_A_PAGE = 2;

/**
 * A bench sheet as HTML: a table for every two trials, a line a column of the log, its cautions under each. Blanks carry
 * `data-label="write here"`, for a page to make them high enough.
 */
export function benchSheetHtml(sheet: BenchSheet): string {
  return benchSheetParts(sheet).join("\n");
}

/** The same, a page each; no page holds trials of two mornings. */
export function benchSheetParts(sheet: BenchSheet): readonly string[] {
  const mornings = [...new Set(sheet.sessions)];
  return mornings.flatMap((morning) => {
    const places = sheet.trialIds.map((_, at) => at).filter((at) => sheet.sessions[at] === morning);
    const pages = Array.from({ length: Math.ceil(places.length / ON_A_PAGE) }, (_, page) =>
      places.slice(page * ON_A_PAGE, (page + 1) * ON_A_PAGE),
    );
    return pages.map((page) => partHtml(sheet, page, mornings.length === 1 ? "" : `, morning ${morning}`));
  });
}

function partHtml(
  { kitchenName, trialIds, rows, cautions }: BenchSheet,
  places: readonly number[],
  when: string,
): string {
  const ids = places.map((at) => trialIds[at]);
  const title = `${kitchenName}, bench sheet${when}: ${ids.join(" and ")}`;
  const head = ["write", ...ids].map((text) => `<th scope="col">${escapeHtml(text)}</th>`);
  const lines = rows.map(({ heading, hint, cells }) => {
    const small = hint === "" ? "" : `<br><small>${escapeHtml(hint)}</small>`;
    const blanks = places.map((at) => placeHtml(cells[at]));
    return `<tr><th scope="row">${escapeHtml(heading)}${small}</th>${blanks.join("")}</tr>`;
  });
  const below = cautions.map((caution) => `<p class="note">${escapeHtml(keepQuantities(caution))}</p>`);
  return `<table><caption>${escapeHtml(title)}</caption><thead><tr>${head.join("")}</tr></thead>\n<tbody>\n${lines.join("\n")}\n</tbody></table>\n${below.join("\n")}`;
}

function placeHtml({ printed, plan }: BenchCell): string {
  if (printed !== null) return `<td>${escapeHtml(printed)}</td>`;
  return `<td data-label="write here">${plan === null ? "" : `<small>${escapeHtml(keepQuantities(plan))}</small>`}</td>`;
}
