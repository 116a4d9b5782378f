import { errorWords } from "../notebook/error-words";
import { bundleText, type Output, textOf } from "../notebook/notebook";
import { escapeHtml, scriptJson, withoutColours } from "./escape";
import { type Figure, figureOf } from "./figure-of";
import { renderMarkdown } from "./render-markdown";
import { safeHtml } from "./safe-html";

/** One output of a cell as HTML for the report; `id` is unique on the page. */
export function renderOutput(output: Output, id: string): string {
  if (output.output_type === "stream") {
    const text = escapeHtml(withoutColours(textOf(output.text)).trimEnd());
    const name = output.name === "stderr" ? "stderr" : "stdout"; // a file may hold any text as the name
    return text ? `<pre class="out ${name}">${text}</pre>` : "";
  }
  if (output.output_type === "error") return renderError(output);
  return renderData(output.data, id);
}

/** What a failed cell says to a reader: its sentence alone; where it came from is folded behind it. */
function renderError(error: Extract<Output, { output_type: "error" }>): string {
  const { sentence, where } = errorWords(error);
  const folded = where && `<details><summary>where</summary><pre>${escapeHtml(where)}</pre></details>`;
  return `<div class="out error"><p>${escapeHtml(withoutColours(sentence))}</p>${folded}</div>`;
}

/** The richest form of a MIME bundle that the page can show. */
function renderData(data: Readonly<Record<string, unknown>>, id: string): string {
  const text = (mime: string): string | null => bundleText(data, mime);
  const plain = text("text/plain");
  const svg = text("image/svg+xml");
  const figure = figureOf(data);
  if (figure) return renderFigure(figure, plain ?? "", svg, id);
  const html = text("text/html");
  if (html !== null) return `<div class="out rich">${safeHtml(html)}</div>`;
  if (svg !== null) return `<div class="out">${picture("image/svg+xml", toBase64(svg), plain ?? "")}</div>`;
  for (const mime of ["image/png", "image/jpeg", "image/gif"]) {
    const base64 = text(mime)?.replace(/\s/g, "");
    if (base64 && /^[A-Za-z0-9+/=]+$/.test(base64))
      return `<div class="out">${picture(mime, base64, plain ?? "")}</div>`;
  }
  const markdown = text("text/markdown");
  if (markdown !== null)
    return `<div class="out prose">${renderMarkdown(markdown, { prefix: id, lower: 2 }).html}</div>`;
  if (plain !== null) return `<pre class="out">${escapeHtml(withoutColours(plain).trimEnd())}</pre>`;
  const other = Object.keys(data).join(", ");
  return `<p class="absent">[an output of type ${escapeHtml(other)}, which this page does not show]</p>`;
}

/** A figure that plotly draws on the page; before that, and without scripts, its picture and its sentence. */
function renderFigure({ data, layout }: Figure, summary: string, svg: string | null, id: string): string {
  const height = typeof layout?.height === "number" ? layout.height : 440;
  const still = svg === null ? "" : `<noscript>${picture("image/svg+xml", toBase64(svg), summary)}</noscript>`;
  const words = summary ? `<figcaption>${escapeHtml(summary.trim())}</figcaption>` : "";
  return (
    `<figure class="out plot"><div class="canvas" id="${id}" style="height:${height}px" role="img" aria-label="${escapeHtml(summary.trim())}"></div>` +
    `<script type="application/json" data-for="${id}">${scriptJson({ data, layout })}</script>${still}${words}</figure>`
  );
}

function picture(mime: string, base64: string, words: string): string {
  return `<img src="data:${mime};base64,${base64}" alt="${escapeHtml(words.trim())}">`;
}

function toBase64(text: string): string {
  return Buffer.from(text, "utf8").toString("base64");
}
