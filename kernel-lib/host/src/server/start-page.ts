import { SHELF } from "../kitchen/kitchen-shelf";
import type { OpenKitchen } from "../kitchen/open-kitchen";
import { leadOf } from "../notebook/lead-of";
import { type Notebook, titleOf } from "../notebook/notebook";
import { escapeHtml } from "../report/escape";
import type { Contents, Entry } from "./contents";
import { pageShell } from "./page-shell";
import type { SessionModel } from "./sessions";

/** One notebook on the start page. */
interface Line {
  readonly path: string;
  readonly number: string;
  readonly title: string;
  readonly lead: string;
}

/** How many folders deep notebooks are looked for. */
export const DEEPEST = 3;

/**
 * The start page: the open kitchen, notebooks by number, with what each is about, and the kernels that run. It is there at
 * once: what the library has to say of the kitchen is asked for by the page's script.
 */
export async function startPage(
  contents: Contents,
  sessions: readonly SessionModel[],
  kitchen: OpenKitchen | null,
): Promise<string> {
  const lines: Line[] = [];
  for (const entry of await notebooksBelow(contents, "", DEEPEST)) lines.push(await lineOf(contents, entry));
  const running = new Map(sessions.map((session) => [session.path, session]));
  const items = lines.map((line) => {
    const href = `/open/${line.path.split("/").map(encodeURIComponent).join("/")}`;
    const badge = running.has(line.path) ? '<span class="badge">kernel runs</span>' : "";
    return `<li data-path="${escapeHtml(line.path)}">
<a class="notebook" href="${escapeHtml(href)}"><span class="number">${escapeHtml(line.number)}</span>
<span class="words"><span class="title">${escapeHtml(line.title)}</span> ${badge}<span class="lead">${escapeHtml(line.lead)}</span><span class="path">${escapeHtml(line.path)}</span></span></a>
<span class="acts"><button type="button" data-act="copy">copy</button><details class="more"><summary>more</summary><button type="button" data-act="rename">rename</button><button type="button" data-act="remove">remove</button></details></span></li>`;
  });
  const kernels = sessions.map(
    ({ id, path, kernel }) => `<li data-session="${escapeHtml(id)}"><span class="path">${escapeHtml(path)}</span>
<span class="quiet">${escapeHtml(kernel.execution_state)}, ${kernel.connections} open ${kernel.connections === 1 ? "page" : "pages"}, last used ${escapeHtml(kernel.last_activity.slice(11, 16))} UTC</span>
<button type="button" data-act="stop">stop</button></li>`,
  );
  const none = '<p class="quiet">No kernel runs. One starts with each notebook that you open.</p>';
  const body = `<header><h1>${escapeHtml(kitchen?.place.name ?? "Notebooks")}</h1><span class="acts">${kitchen ? '<a class="act" href="/log">log a trial</a>' : ""}<button type="button" id="new"${kitchen?.place.notebooks ? ` data-folder="${SHELF}"` : ""}>new notebook</button><a class="act" href="/reference/">reference</a></span></header>
<p id="notice" role="status" hidden></p>
<main>${kitchen ? await kitchenPart(kitchen) : ""}<ol class="notebooks">${items.join("\n") || '<li class="quiet">No notebook is here yet.</li>'}</ol>
<h2>Running kernels</h2>${kernels.length ? `<ul class="kernels">${kernels.join("\n")}</ul>` : none}</main>`;
  const title = kitchen?.place.name ?? "Notebooks";
  return pageShell({ title, body, scripts: ["start.js"], styles: ["start.css"], data: {} });
}

/** What is known of the kitchen without reading it, and the place for what is not. */
async function kitchenPart({ place, reportTime }: OpenKitchen): Promise<string> {
  const time = await reportTime();
  const written = time && `${time.toISOString().slice(0, 10)} ${time.toISOString().slice(11, 16)} UTC`;
  const report = written
    ? `<a href="/report">report of ${written}</a>`
    : '<span class="quiet">no report yet: <code>npm start</code> writes it</span>';
  return `<p class="place"><span class="path">${escapeHtml(place.folder)}</span> ${report}</p>
<section id="kitchen" aria-label="the kitchen" aria-live="polite" aria-busy="true"><p class="quiet">Reading the kitchen …</p></section>
<noscript><p>What the kitchen makes and how far it is needs JavaScript; <code>npm run check-kitchen</code> says it too.</p></noscript>
<h2>Notebooks</h2>`;
}

async function notebooksBelow(contents: Contents, folder: string, depth: number): Promise<Entry[]> {
  const { content } = await contents.get(folder, true);
  const found: Entry[] = [];
  for (const entry of content as Entry[]) {
    if (entry.type === "notebook") found.push(entry);
    // a folder that cannot be read, or is gone by now, has nothing to show
    else if (depth > 1)
      for (const below of await notebooksBelow(contents, entry.path, depth - 1).catch(() => [])) found.push(below);
  }
  return found;
}

async function lineOf(contents: Contents, entry: Entry): Promise<Line> {
  const stem = entry.name.replace(/\.ipynb$/, "");
  const number = /^\d+/.exec(stem)?.[0] ?? "·";
  try {
    const notebook = (await contents.get(entry.path, true)).content as Notebook;
    const title = titleOf(notebook, stem).replace(/^\d+\.\s+/, "");
    return { path: entry.path, number, title, lead: leadOf(notebook, title) };
  } catch (error) {
    return { path: entry.path, number, title: stem, lead: `cannot be read: ${(error as Error).message}` };
  }
}
