import { errorWords } from "../notebook/error-words";
import { bundleText, type Output, textOf } from "../notebook/notebook";
import { escapeHtml, scriptJson, withoutColours } from "./escape";
import { type Figure, figureOf } from "./figure-of";
import { figureParts } from "./figure-parts";
import { figureWords } from "./figure-words";
import { renderMarkdown } from "./render-markdown";
import { safeHtml } from "./safe-html";
import { underHeading } from "./under-heading";

/** Where an output stands on the page. */
export interface OutputPlace {
  /** unique on the page */
  readonly id: string;
  /** level of the heading that it stands under */
  readonly level: number;
}

/** One output of a cell as HTML for the report. */
export function renderOutput(output: Output, place: OutputPlace): string {
  if (output.output_type === "stream") {
    const text = escapeHtml(withoutColours(textOf(output.text)).trimEnd());
    const name = output.name === "stderr" ? "stderr" : "stdout"; // a file may hold any text as the name
    return text ? `<pre class="out ${name}">${text}</pre>` : "";
  }
  if (output.output_type === "error") return renderError(output);
  return renderData(output.data, place);
}

/** What a failed cell says to a reader: its sentence alone; where it came from is folded behind it. */
function renderError(error: Extract<Output, { output_type: "error" }>): string {
  const { sentence, where } = errorWords(error);
  const folded = where && `<details><summary>where</summary><pre>${escapeHtml(where)}</pre></details>`;
  return `<div class="out error"><p>${escapeHtml(withoutColours(sentence))}</p>${folded}</div>`;
}

/** The richest form of a MIME bundle that the page can show. */
function renderData(data: Readonly<Record<string, unknown>>, { id, level }: OutputPlace): string {
  const text = (mime: string): string | null => bundleText(data, mime);
  const plain = text("text/plain");
  const svg = text("image/svg+xml");
  const figure = figureOf(data);
  if (figure) return renderFigure(figure, plain ?? "", svg, id);
  const html = text("text/html");
  if (html !== null) return `<div class="out rich">${underHeading(safeHtml(html), level)}</div>`;
  if (svg !== null) return `<div class="out">${picture(svgAddress(svg), plain ?? "")}</div>`;
  for (const mime of ["image/png", "image/jpeg", "image/gif"]) {
    const base64 = text(mime)?.replace(/\s/g, "");
    if (base64 && /^[A-Za-z0-9+/=]+$/.test(base64))
      return `<div class="out">${picture(`data:${mime};base64,${base64}`, plain ?? "")}</div>`;
  }
  const markdown = text("text/markdown");
  if (markdown !== null)
    return `<div class="out prose">${renderMarkdown(markdown, { prefix: id, lower: 2 }).html}</div>`;
  if (plain !== null) return `<pre class="out">${escapeHtml(withoutColours(plain).trimEnd())}</pre>`;
  const other = Object.keys(data).join(", ");
  return `<p class="absent">[an output of type ${escapeHtml(other)}, which this page does not show]</p>`;
}

/**
 * A figure that plotly draws on the page when it comes into sight; before that, without scripts and on paper, its still
 * picture. Behind it stand what it shows in words, and room for its data as a table, which the page's script makes.
 */
function renderFigure(figure: Figure, summary: string, svg: string | null, id: string): string {
  const height = typeof figure.layout?.height === "number" ? figure.layout.height : 440;
  const title = figureParts(figure).title || summary.trim().split(". ")[0];
  const words = escapeHtml(figureWords(figure));
  const still =
    svg === null
      ? ""
      : `<img class="still${isTall(svg) ? " tall" : ""}" src="${svgAddress(svg)}" alt="${escapeHtml(title)}">`;
  const caption = summary.trim() ? `<figcaption>${escapeHtml(summary.trim())}</figcaption>` : "";
  const data = scriptJson({ data: figure.data, layout: figure.layout }, shortened);
  return (
    `<figure class="out plot${still && " with-still"}" data-title="${escapeHtml(title)}">` +
    `<div class="canvas" id="${id}" style="height:${height}px" role="group" aria-label="${escapeHtml(title)}"></div>${still}` +
    `<script type="application/json" data-for="${id}">${data}</script>${caption}` +
    `<details><summary>data of this figure, and what it shows</summary><p>${words}</p></details></figure>`
  );
}

/** Numbers with the seven digits that a picture can show, which halves a page. Whole ones stay: they may be times. */
function shortened(_: string, value: unknown): unknown {
  return typeof value === "number" && !Number.isInteger(value) ? Number(value.toPrecision(7)) : value;
}

function picture(address: string, words: string): string {
  return `<img src="${address}" alt="${escapeHtml(words.trim())}">`;
}

/** A picture made of text as an address, which is shorter than in base64; half of a pair of letters becomes U+FFFD. */
function svgAddress(svg: string): string {
  const whole = svg.replace(/\p{Surrogate}/gu, "\ufffd");
  // the other quotes stand for one letter in the address, not three
  const quoted = whole.includes("'") ? whole : whole.replace(/<[^<>]*>/g, (tag) => tag.replaceAll('"', "'"));
  return `data:image/svg+xml,${quoted.replace(/[%#<>"&\r\n\t]|[^\x20-\x7e]/gu, encodeURIComponent)}`;
}

/** A still picture that is higher than wide. */
function isTall(svg: string): boolean {
  const [, width = 0, height = 0] = /^<svg[^<>]* width="(\d+)" height="(\d+)"/.exec(svg) ?? [];
  return Number(height) > Number(width);
}
