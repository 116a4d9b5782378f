import type { Answers } from "../advice/answer/answers";
import type { ReheatCard } from "../advice/card/reheat-card";
import type { BenchSheet } from "../advice/trial/bench-sheet";
import { answerNotes } from "../views/advice/answer-notes";
import { answerTable } from "../views/advice/answer-table";
import { answerText } from "../views/advice/answer-text";
import { cardNote } from "../views/advice/card-note";
import type { Figure } from "../views/figure/figure";
import { svgOf } from "../views/figure/svg-of";
import { benchSheetHtml } from "../views/log/bench-sheet-html";
import { benchSheetText } from "../views/log/bench-sheet-text";
import type { Note } from "../views/note/note";
import { noteHtml } from "../views/note/note-html";
import { noteText } from "../views/note/note-text";
import { escapeHtml } from "../views/table/escape-html";
import type { Table } from "../views/table/table";
import { tableHtml } from "../views/table/table-html";
import { tableText } from "../views/table/table-text";
import { kernelDisplay } from "./kernel-display";

/** What `show` can render. */
export type Showable =
  | Figure
  | Table
  | Answers
  | ReheatCard
  | BenchSheet
  | Note
  | string
  | { readonly sentence: string };

/**
 * Shows a figure, a table, a card, a bench sheet, the answers of a kitchen, a sentence, or the sentence of a result that has one (such as a
 * crisp window) in the notebook, and always in plain text as well, so that the same cell says something in a terminal; a
 * figure also as a still picture, for viewers that cannot draw it. Outside a notebook kernel it prints the text.
 *
 * @example
 * show(reheatCard({ kitchen: loadKitchen(), variantId: "beet-lentil" })); // → undefined
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
  if (result.kind === "answers") return answersBundle(result);
  if (result.kind === "reheat card") return notesBundle([cardNote(result)]);
  if (result.kind === "bench sheet")
    return { "text/plain": benchSheetText(result), "text/html": benchSheetHtml(result) };
  if (result.kind === "note") return notesBundle([result]);
  if (result.kind === "table") return { "text/plain": tableText(result), "text/html": tableHtml(result) };
  return {
    "text/plain": result.summary,
    "application/vnd.plotly.v1+json": { data: result.data, layout: result.layout },
    "image/svg+xml": svgOf(result),
  };
}

function answersBundle(answers: Answers): Record<string, unknown> {
  const html = [tableHtml(answerTable(answers)), ...answerNotes(answers).map(noteHtml)];
  return { "text/plain": answerText(answers), "text/html": html.join("\n") };
}

function notesBundle(notes: readonly Note[]): Record<string, unknown> {
  return {
    "text/plain": notes.map((note) => noteText(note)).join("\n\n"),
    "text/html": notes.map(noteHtml).join("\n"),
  };
}

/** Whether a text is laid out in columns, which only a fixed-width face keeps. */
function hasColumns(text: string): boolean {
  return /\S {2,}\S/.test(text);
}

function proseHtml(text: string): string {
  return `<p>${text.split("\n").map(escapeHtml).join("<br>")}</p>`;
}
