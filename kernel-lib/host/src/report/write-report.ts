import { basename } from "node:path";
import { type Cell, type Notebook, tagsOf, textOf, titleOf } from "../notebook/notebook";
import { writeWhole } from "../notebook/write-whole";
import { escapeHtml } from "./escape";
import { type Figure, figureOf, isEvaluated } from "./figure-of";
import { pagePolicy, scriptText } from "./page-policy";
import { plotlySource } from "./plotly-source";
import { type Heading, renderMarkdown } from "./render-markdown";
import { renderOutput } from "./render-output";
import { REPORT_SCRIPT } from "./report-script";
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

/**
 * Writes executed notebooks as one HTML page that needs nothing else: first what cells tagged `answer` show, then the
 * contents list, and notebook after notebook prose, folded code, tables, and figures that plotly draws
 * offline. Every text is escaped; the page's policy allows its own two scripts by their hashes and no other, and it fetches
 * nothing.
 */
export async function writeReport(options: ReportOptions): Promise<void> {
  const answer = options.notebooks.flatMap(({ notebook }, index) => answersIn(notebook, index + 1)).join("\n");
  const sections = options.notebooks.map(({ path, notebook }, index) => renderNotebook(notebook, path, index + 1));
  const figures = options.notebooks.flatMap(({ notebook }) => notebook.cells.flatMap(figuresOf));
  const title = options.title ?? "Slab trials, settings and yields";
  const scripts = figures.length > 0 ? [scriptText(await plotlySource()), scriptText(REPORT_SCRIPT)] : [];
  const page = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${pagePolicy({ scripts, evaluates: figures.some(isEvaluated) })}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title>
<style>${REPORT_STYLE}</style>
</head>
<body>
<header><h1>${escapeHtml(title)}</h1><p class="quiet">${escapeHtml(options.subtitle ?? "")}</p></header>
${answer === "" ? "" : `<section id="answer" aria-label="The answer">${answer}</section>`}
<nav aria-label="Contents"><ul>${sections.map((section) => section.contents).join("")}</ul></nav>
<main>${sections.map((section) => section.html).join("\n")}</main>
<footer>Times and temperatures in this report are guidance for a test kitchen. Check the core of the thickest piece with a probe; local food codes and licensed practice come first.</footer>
${scripts.map((text) => `<script>${text}</script>`).join("")}
</body>
</html>
`;
  await writeWhole(options.path, page);
}

function renderNotebook(notebook: Notebook, path: string, number: number): { html: string; contents: string } {
  const id = `n${number}`;
  const title = titleOf(notebook, basename(path, ".ipynb"));
  let headings: readonly Heading[] = [];
  let titled = false;
  const cells = notebook.cells.map((cell, index) => {
    const at = cellId(number, index + 1);
    if (cell.cell_type === "code") return renderCode(cell, at, index + 1);
    if (cell.cell_type === "raw") return `<pre class="out">${escapeHtml(textOf(cell.source))}</pre>`;
    const markdown = renderMarkdown(textOf(cell.source), { prefix: at, attachments: cell.attachments, lower: 1 });
    headings = headings.concat(titled ? markdown.headings : markdown.headings.slice(1));
    titled ||= markdown.headings.length > 0;
    return `<div class="prose">${markdown.html}</div>`;
  });
  const failed = notebook.cells.some(hasFailed);
  const heading = titled ? "" : `<h2>${escapeHtml(title)}</h2>`;
  const html = `<section id="${id}"${failed ? ' class="failed"' : ""}>${heading}\n${cells.join("\n")}\n</section>`;
  const inner = headings
    .filter(({ level }) => level <= 2)
    .map((entry) => `<li><a href="#${entry.id}">${escapeHtml(entry.text)}</a></li>`);
  const list = inner.length ? `<details><summary>sections</summary><ul>${inner.join("")}</ul></details>` : "";
  return { html, contents: `<li><a href="#${id}">${escapeHtml(title)}</a>${list}</li>` };
}

/** What cells tagged `answer` show: it opens the page, and does not stand in their own place again. */
function answersIn(notebook: Notebook, number: number): string[] {
  return notebook.cells.flatMap((cell, index) =>
    isAnswer(cell) ? outputsOf(cell, cellId(number, index + 1)).join("\n") : [],
  );
}

function isAnswer(cell: Cell): boolean {
  return cell.cell_type === "code" && tagsOf(cell).includes("answer");
}

function cellId(notebook: number, cell: number): string {
  return `n${notebook}-c${cell}`;
}

function outputsOf(cell: Cell, id: string): string[] {
  return (cell.outputs ?? []).map((output, index) => renderOutput(output, `${id}-o${index + 1}`));
}

function renderCode(cell: Cell, id: string, number: number): string {
  const source = textOf(cell.source);
  const lead = '<p class="quiet"><a href="#answer">What it shows opens this page.</a></p>';
  const outputs = isAnswer(cell) ? [lead] : outputsOf(cell, id);
  if (source.trim() === "" && outputs.length === 0) return "";
  const code =
    source.trim() === ""
      ? ""
      : `<details class="code"><summary>code of cell ${number}</summary><pre><code>${escapeHtml(source)}</code></pre></details>`;
  return `<div class="cell" id="${id}">${code}${outputs.join("\n")}</div>`;
}

function hasFailed(cell: Cell): boolean {
  const failed = (cell.outputs ?? []).some((output) => output.output_type === "error");
  return failed && !tagsOf(cell).includes("raises-exception");
}

function figuresOf(cell: Cell): Figure[] {
  const shown = (cell.outputs ?? []).map((output) => ("data" in output ? figureOf(output.data) : null));
  return shown.filter((figure) => figure !== null);
}
