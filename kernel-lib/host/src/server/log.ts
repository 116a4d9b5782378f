import type { IncomingMessage } from "node:http";
import type { TypedCells } from "../kitchen/asked-kitchen";
import type { OpenKitchen } from "../kitchen/open-kitchen";
import { escapeHtml } from "../report/escape";
import { jsonBody } from "./body";
import { HttpError } from "./http-error";
import { pageShell } from "./page-shell";

/** Bytes of a trial that is sent; a long note has some thousand. */
const BODY_LIMIT = 65_536;
/** How many cells a trial has at most: more than a log has columns. */
const MOST_CELLS = 80;

/** The page on which trials are logged; what the form holds is asked for by its script. */
export function logPage({ place }: OpenKitchen): string {
  const body = `<header><h1>Log a trial</h1><a href="/">${escapeHtml(place.name)}</a></header>
<div id="notice" role="alert" hidden></div>
<main id="log" aria-busy="true"><p class="quiet">Reading the kitchen …</p></main>
<noscript><p>The form needs JavaScript; a trial is as well a line in a file of the kitchen's folder <code>trials</code>.</p></noscript>`;
  return pageShell({
    title: `Log a trial · ${place.name}`,
    body,
    scripts: ["log.js"],
    styles: ["log.css"],
    data: { kitchenFolder: place.folder },
  });
}

/** What the form asks for: a check of what is typed, the logging of it, and to take that back. */
export async function logAnswer({ trials }: OpenKitchen, request: IncomingMessage, path: string): Promise<unknown> {
  const ask = ASKED.get(path.slice("/log/".length));
  if (ask === undefined) throw new HttpError(404, "no such address");
  if (request.method !== "POST") throw new HttpError(405, `${request.method} is not allowed here`);
  // a form of another page cannot send this type
  if (!/^application\/json\s*(;|$)/i.test(request.headers["content-type"] ?? ""))
    throw new HttpError(415, "the body must be of the type application/json");
  const body = await jsonBody(request, BODY_LIMIT);
  return ask(trials, body).catch((error: Error) => {
    throw error instanceof HttpError ? error : new HttpError(409, error.message);
  });
}

type Asked = (trials: OpenKitchen["trials"], body: Readonly<Record<string, unknown>>) => Promise<unknown>;

const ASKED: ReadonlyMap<string, Asked> = new Map<string, Asked>([
  ["check", async (trials, body) => trials.checkDraft(cellsOf(body))],
  ["trial", async (trials, body) => trials.logDraft(cellsOf(body), body.by === undefined ? null : textOf(body, "by"))],
  ["undo", async (trials, body) => trials.undo(textOf(body, "file"), textOf(body, "trialId"))],
]);

function cellsOf({ cells }: Readonly<Record<string, unknown>>): TypedCells {
  const entries = typeof cells === "object" && cells !== null && !Array.isArray(cells) ? Object.entries(cells) : null;
  if (entries === null || entries.length > MOST_CELLS || !entries.every(([, text]) => typeof text === "string"))
    throw new HttpError(400, `cells must be an object of at most ${MOST_CELLS} texts`);
  return cells as TypedCells;
}

function textOf(body: Readonly<Record<string, unknown>>, name: string): string {
  const text = body[name];
  if (typeof text !== "string" || text === "" || text.length > 200)
    throw new HttpError(400, `${name} must be a text of 1 to 200 characters`);
  return text;
}
