import { basename } from "node:path";
import { type Cell, type Notebook, tagsOf, textOf, titleOf } from "../notebook/notebook";
import { writeWhole } from "../notebook/write-whole";
import { type Brief, briefOf, isAnswer } from "./brief";
import { cssString } from "./css-string";
import { escapeHtml } from "./escape";
import { type Figure, figureOf, isEvaluated } from "./figure-of";
import { pagePolicy } from "./page-policy";
import { pageScript } from "./page-script";
import { packedPlotly } from "./plotly-source";
import { PRINT_STYLE } from "./print-style";
import { type Heading, renderMarkdown } from "./render-markdown";
import { renderOutput } from "./render-output";
import { REPORT_STYLE } from "./report-style";

/** What `writeReport` needs to know. */
export interface ReportOptions {
  /** executed notebooks in the order of the page */
  readonly notebooks: readonly { readonly path: string; readonly notebook: Notebook }[];
  /** the page's file */
  readonly path: string;
  /** heading of the page: the kitchen's name; "Slab trials, settings and yields" */
  readonly title?: string;
  /** a line under the heading: which kitchen, when */
  readonly subtitle?: string;
}

/** A part of the page that prints only where the reader asks for the working too, or only where not. */
const SUMMARY_ONLY = `<p class="summary-only">This print is the summary: the answer, and of each question its first figure. The working stands on the page itself, and is printed where "print the working too" is chosen there.</p>`;

/**
 * Writes executed notebooks as one HTML page that needs nothing else: first what cells tagged `answer` show, then the
 * contents list, and notebook after notebook prose, folded code, tables, and figures that plotly draws
 * offline. Printed, it is a summary, unless the reader asks for all (`briefOf`); a page without an answer prints whole. Every
 * text is escaped; the page's policy allows its own script and plotly by their hashes and no other, and it fetches nothing.
 */
export async function writeReport(options: ReportOptions): Promise<void> {
  const answer = options.notebooks.flatMap(({ notebook }, index) => answersIn(notebook, index + 1)).join("\n");
  const sections = options.notebooks.map(({ path, notebook }, index) => renderNotebook(notebook, path, index + 1));
  const figures = options.notebooks.flatMap(({ notebook }) => notebook.cells.flatMap(figuresOf));
  const title = options.title ?? "Slab trials, settings and yields";
  const hasSummary = answer !== "";
  const script = await pageScript();
  const plotly = figures.length > 0 ? await packedPlotly() : null;
  const policy = pagePolicy({
    scripts: plotly === null ? [script] : [script, plotly.source],
    evaluates: figures.some(isEvaluated),
  });
  const page = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title>
<style>${REPORT_STYLE}${PRINT_STYLE}
@page { @bottom-left { content: ${cssString(title.slice(0, LONGEST_FOOT))}; } }</style>
<noscript><style>.with-still .canvas { display: none; } .still { display: block; } .print-choice { display: none; }</style></noscript>
</head>
<body${hasSummary ? ' class="has-summary"' : ""}>
<a class="skip" href="#main">Skip to the notebooks</a>
<header><h1>${escapeHtml(title)}</h1><p class="quiet">${escapeHtml(options.subtitle ?? "")}</p></header>
${hasSummary ? `<section id="answer" aria-label="The answer">${answer}</section>` : ""}
<nav id="contents" aria-label="Contents"><details open><summary>Contents<span class="here"></span></summary><ul>${hasSummary ? '<li><a href="#answer">The answer</a></li>' : ""}${sections.map((section) => section.contents).join("")}</ul>${hasSummary ? PRINT_CHOICE : ""}</details></nav>
<main id="main">${sections.map((section) => section.html).join("\n")}</main>
<footer>${hasSummary ? SUMMARY_ONLY : ""}<p>Times and temperatures in this report are guidance for a test kitchen. Check the core of the thickest piece with a probe; local food codes and licensed practice come first.</p></footer>
${plotly === null ? "" : `<script type="text/plain" id="plotly">${plotly.base64}</script>`}
<script type="module">${script}</script>
</body>
</html>
`;
  await writeWhole(options.path, page);
}

/** Letters of the title that stand at the foot of each printed page. */
const LONGEST_FOOT = 70;

const PRINT_CHOICE = `<p class="print-choice"><label><input type="checkbox" id="print-all" autocomplete="off"> print the working too</label><br>Without it a summary is printed.</p>`;

function renderNotebook(notebook: Notebook, path: string, number: number): { html: string; contents: string } {
  const id = `n${number}`;
  const title = titleOf(notebook, basename(path, ".ipynb"));
  const brief = briefOf(notebook);
  let headings: readonly Heading[] = [];
  let titled = false;
  let level = 2;
  const cells = notebook.cells.map((cell, index) => {
    const at = cellId(number, index + 1);
    const mark = brief.cells.has(index) ? " brief" : "";
    if (cell.cell_type === "code") return renderCode(cell, { id: at, number: index + 1, level, brief });
    if (cell.cell_type === "raw") return `<pre class="out${mark}">${escapeHtml(textOf(cell.source))}</pre>`;
    const markdown = renderMarkdown(textOf(cell.source), { prefix: at, attachments: cell.attachments, lower: 1 });
    const opens = !titled && markdown.headings.length > 0;
    headings = headings.concat(opens ? markdown.headings.slice(1) : markdown.headings);
    titled ||= opens;
    level = Math.min(6, 1 + (markdown.headings.at(-1)?.level ?? level - 1));
    return `<div class="prose${mark}${opens ? " opening" : ""}">${markdown.html}</div>`;
  });
  const failed = notebook.cells.some(hasFailed);
  const heading = titled ? "" : `<h2>${escapeHtml(title)}</h2>`;
  const classes = [failed && "failed", brief.cells.size === 0 && "working"].filter(Boolean).join(" ");
  const html = `<section id="${id}"${classes && ` class="${classes}"`}>${heading}\n${cells.join("\n")}\n</section>`;
  const inner = headings
    .filter(({ level }) => level <= 2)
    .map((entry) => `<li><a href="#${entry.id}">${escapeHtml(entry.text)}</a></li>`);
  const list = inner.length ? `<details><summary>sections</summary><ul>${inner.join("")}</ul></details>` : "";
  return { html, contents: `<li><a href="#${id}">${escapeHtml(title)}</a>${list}</li>` };
}

/** What cells tagged `answer` show: it opens the page, and does not stand in their own place again. */
function answersIn(notebook: Notebook, number: number): string[] {
  return notebook.cells.flatMap((cell, index) =>
    isAnswer(cell) ? outputsOf(cell, cellId(number, index + 1), 1).join("\n") : [],
  );
}

function cellId(notebook: number, cell: number): string {
  return `n${notebook}-c${cell}`;
}

function outputsOf(cell: Cell, id: string, level: number): string[] {
  return (cell.outputs ?? []).map((output, index) => renderOutput(output, { id: `${id}-o${index + 1}`, level }));
}

/** Where a code cell stands. */
interface CodePlace {
  readonly id: string;
  /** as the notebook counts */
  readonly number: number;
  /** of the heading above it */
  readonly level: number;
  readonly brief: Brief;
}

function renderCode(cell: Cell, { id, number, level, brief }: CodePlace): string {
  const source = textOf(cell.source);
  const lead = '<p class="quiet"><a href="#answer">What it shows opens this page.</a></p>';
  const outputs = isAnswer(cell) ? [lead] : outputsOf(cell, id, level);
  if (source.trim() === "" && outputs.length === 0) return "";
  const code =
    source.trim() === ""
      ? ""
      : `<details class="code"><summary>code of cell ${number}</summary><pre tabindex="0"><code>${escapeHtml(source)}</code></pre></details>`;
  const mark = brief.cells.has(number - 1) ? (brief.figureCell === number - 1 ? " brief first-figure" : " brief") : "";
  return `<div class="cell${mark}" id="${id}">${code}${outputs.join("\n")}</div>`;
}

function hasFailed(cell: Cell): boolean {
  const failed = (cell.outputs ?? []).some((output) => output.output_type === "error");
  return failed && !tagsOf(cell).includes("raises-exception");
}

function figuresOf(cell: Cell): Figure[] {
  const shown = (cell.outputs ?? []).map((output) => ("data" in output ? figureOf(output.data) : null));
  return shown.filter((figure) => figure !== null);
}
