import type { Figure } from "../views/figure/figure";
import { svgOf } from "../views/figure/svg-of";
import { escapeHtml } from "../views/table/escape-html";
import type { Table } from "../views/table/table";
import { tableHtml } from "../views/table/table-html";
import { tableText } from "../views/table/table-text";
import { kernelDisplay } from "./kernel-display";

/** What `show` can render. */
export type Showable = Figure | Table | string | { readonly sentence: string };

/**
 * Shows a figure, a table, a sentence, or the sentence of a result that has one (such as a crisp window) in the notebook, and always in plain text as well, so that the same cell says
 * something in a terminal; a figure also as a still picture, for viewers that cannot draw it. Outside a notebook kernel it prints the text.
 */
export function show(result: Showable): void {
  const bundle = bundleOf(result);
  const display = kernelDisplay();
  if (display === null) console.log(bundle["text/plain"]);
  else display(bundle);
}

function bundleOf(result: Showable): Record<string, unknown> {
  if (typeof result === "string")
    return hasColumns(result) ? { "text/plain": result } : { "text/plain": result, "text/html": proseHtml(result) };
  if ("sentence" in result) return bundleOf(result.sentence);
  if (result.kind === "table") return { "text/plain": tableText(result), "text/html": tableHtml(result) };
  return {
    "text/plain": result.summary,
    "application/vnd.plotly.v1+json": { data: result.data, layout: result.layout },
    "image/svg+xml": svgOf(result),
  };
}

/** Whether a text is laid out in columns, which only a fixed-width face keeps. */
function hasColumns(text: string): boolean {
  return /\S {2,}\S/.test(text);
}

function proseHtml(text: string): string {
  return `<p>${text.split("\n").map(escapeHtml).join("<br>")}</p>`;
}
