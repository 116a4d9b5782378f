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

/** The same, a page each. */
export function benchSheetParts({ kitchenName, trialIds, rows, cautions }: BenchSheet): readonly string[] {
  const parts: string[] = [];
  for (let from = 0; from < trialIds.length; from += ON_A_PAGE) {
    const to = Math.min(trialIds.length, from + ON_A_PAGE);
    const title = `${kitchenName}, bench sheet: ${trialIds.slice(from, to).join(" and ")}`;
    const head = ["write", ...trialIds.slice(from, to)].map((text) => `<th scope="col">${escapeHtml(text)}</th>`);
    const lines = rows.map(({ heading, hint, cells }) => {
      const small = hint === "" ? "" : `<br><small>${escapeHtml(hint)}</small>`;
      const places = cells.slice(from, to).map(placeHtml);
      return `<tr><th scope="row">${escapeHtml(heading)}${small}</th>${places.join("")}</tr>`;
    });
    const below = cautions.map((caution) => `<p class="note">${escapeHtml(keepQuantities(caution))}</p>`);
    parts.push(
      `<table><caption>${escapeHtml(title)}</caption><thead><tr>${head.join("")}</tr></thead>\n<tbody>\n${lines.join("\n")}\n</tbody></table>\n${below.join("\n")}`,
    );
  }
  return parts;
}

function placeHtml({ printed, plan }: BenchCell): string {
  if (printed !== null) return `<td>${escapeHtml(printed)}</td>`;
  return `<td data-label="write here">${plan === null ? "" : `<small>${escapeHtml(keepQuantities(plan))}</small>`}</td>`;
}
