import { createHash } from "node:crypto";

/**
 * A script as it stands in a page: nothing in it ends or hides its element, and its lines end as an HTML reader leaves
 * them, so that its hash is the one that the browser computes.
 */
export function scriptText(source: string): string {
  return source
    .replace(/\r\n?/g, "\n")
    .replace(/<\/(script)/gi, "<\\/$1")
    .replace(/<!--/g, "<\\!--");
}

/** What a page's policy allows. */
export interface PolicyOptions {
  /** the page's scripts, those that stand on it as `scriptText` gives them */
  readonly scripts: readonly string[];
  /** whether these scripts may make code from text, as some of plotly's kinds do; false */
  readonly evaluates?: boolean;
}

/**
 * The Content-Security-Policy of a page that runs its own scripts and no other, and fetches nothing. Styles may stand
 * inline: plotly, MathML and aligned cells set them, and they cannot run or fetch here.
 */
export function pagePolicy({ scripts, evaluates = false }: PolicyOptions): string {
  const hashes = scripts.map((text) => `'sha256-${createHash("sha256").update(text, "utf8").digest("base64")}'`);
  return [
    "default-src 'none'",
    `script-src ${hashes.join(" ") || "'none'"}${evaluates ? " 'unsafe-eval'" : ""}`,
    "style-src 'unsafe-inline'",
    "img-src data: blob:",
    "font-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}
