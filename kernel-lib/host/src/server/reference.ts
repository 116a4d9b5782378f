import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { extname } from "node:path";
import { escapeHtml } from "../report/escape";
import { confine } from "./confine";
import { HttpError } from "./http-error";

/** What the server answers to an address below `/reference/`. */
export type ReferenceAnswer =
  | { readonly type: string; readonly body: string }
  /** an address to go to instead */
  | { readonly to: string };

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".json": "application/json",
};

/** The one script that stands in the reference's pages themselves, as typedoc writes it: it sets light or dark. */
const THEME_SCRIPT =
  'document.documentElement.dataset.theme = localStorage.getItem("tsd-theme") || "os";document.body.style.display="none";setTimeout(() => window.app?app.showPage():document.body.style.removeProperty("display"),500)';

/** The reference's pages run their own scripts, and ask this server for nothing else. */
export const REFERENCE_POLICY: string = [
  "default-src 'none'",
  `script-src 'self' 'sha256-${createHash("sha256").update(THEME_SCRIPT).digest("base64")}'`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data:",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

/**
 * The reference as `npm run reference` wrote it into a folder. `of/NAME` leads to the page of a name that a door shows, to the
 * first page for any other. Where it is not written yet, its pages say which command does that.
 */
export function reference(folder: string): (path: string) => Promise<ReferenceAnswer> {
  return async (path) => {
    const names = await namesIn(folder);
    if (path === "names.json") return { type: TYPES[".json"], body: JSON.stringify(names ?? {}) };
    if (names === null) return { type: TYPES[".html"], body: notYet };
    if (path.startsWith("of/")) {
      const name = path.slice("of/".length);
      return { to: `/reference/${Object.hasOwn(names, name) ? names[name] : "index.html"}` };
    }
    const asked = path === "" ? "index.html" : path;
    const type = TYPES[extname(asked)];
    if (type === undefined) throw new HttpError(404, "no such page of the reference");
    try {
      return { type, body: await readFile(await confine(folder, asked), "utf8") };
    } catch {
      throw new HttpError(404, "no such page of the reference");
    }
  };
}

/** The page of each name; null while there is no reference. */
async function namesIn(folder: string): Promise<Readonly<Record<string, string>> | null> {
  try {
    return JSON.parse(await readFile(await confine(folder, "names.json"), "utf8"));
  } catch {
    return null;
  }
}

const notYet = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark"><title>${escapeHtml("The reference is not written yet")}</title><body style="font: 1rem/1.5 system-ui, sans-serif; max-width: 40rem; margin: 2rem auto; padding: 0 1rem"><h1>The reference is not written yet</h1><p>Run <code>npm run reference</code> in the project's folder; it takes about a minute. Then load this page again.</p><p><a href="/">notebooks</a></p></body></html>`;
