import { escapeHtml } from "./escape";

const TAGS = new Set(
  (
    "a abbr b blockquote br caption code col colgroup dd del details dfn div dl dt em figcaption figure h1 h2 h3 h4 h5 h6 " +
    "hr i ins kbd li mark ol p pre q s samp small span strong sub summary sup table tbody td tfoot th thead tr u ul var"
  ).split(" "),
);
const VOID_TAGS = new Set(["br", "hr", "col"]);
const SILENT_TAGS = "script|style|template|noscript|iframe|object|textarea|title|xmp|svg|math";
const ATTRIBUTES = new Set([
  "colspan",
  "rowspan",
  "span",
  "scope",
  "title",
  "start",
  "open",
  "lang",
  "dir",
  "data-label",
]);

/** How many tags may stand inside each other; browsers themselves stop at 512. */
const DEEPEST = 200;

/**
 * HTML rebuilt from an allow-list of tags and attributes: tables, lists, text. Every `<` of the result belongs to a
 * tag that this function wrote itself; whatever it does not know becomes text or goes, scripts and styles go with
 * what they hold, tags left open are closed, and from a tag that never ends the rest is text.
 */
export function safeHtml(html: string): string {
  const source = html
    .replace(/<!--[\s\S]*?(?:-->|$)/g, "")
    .replace(new RegExp(`<(${SILENT_TAGS})\\b[\\s\\S]*?(?:</\\1\\s*>|$)`, "gi"), "");
  const open: string[] = [];
  const opened = new Map<string, number>();
  const close = (): string => {
    const tag = open.pop() as string;
    opened.set(tag, (opened.get(tag) ?? 0) - 1);
    return `</${tag}>`;
  };
  let safe = "";
  let at = 0;
  for (const match of source.matchAll(/<(\/?)([a-zA-Z][a-zA-Z0-9]*)/g)) {
    if (match.index < at) continue; // inside the tag before
    const from = match.index + match[0].length;
    const end = tagEnd(source, from);
    if (end === null) break;
    safe += textHtml(source.slice(at, match.index));
    at = end + 1;
    const tag = match[2].toLowerCase();
    if (!TAGS.has(tag)) continue;
    if (!match[1]) {
      if (open.length >= DEEPEST) continue;
      safe += `<${tag}${safeAttributes(tag, source.slice(from, end))}>`;
      if (VOID_TAGS.has(tag)) continue;
      open.push(tag);
      opened.set(tag, (opened.get(tag) ?? 0) + 1);
    } else if ((opened.get(tag) ?? 0) > 0) {
      while (open.at(-1) !== tag) safe += close();
      safe += close();
    }
  }
  safe += textHtml(source.slice(at));
  while (open.length > 0) safe += close();
  return safe;
}

/** Where the `>` stands that ends a tag, one in quotes apart; null where none does. */
function tagEnd(source: string, from: number): number | null {
  let at = from;
  while (at < source.length) {
    const mark = source[at];
    if (mark === ">") return at;
    if (mark === '"' || mark === "'") {
      at = source.indexOf(mark, at + 1);
      if (at < 0) return null;
    }
    at++;
  }
  return null;
}

/** Whether a link may stand in a page: to a place on the page, a web page, an e-mail address or a file beside it. */
export function isSafeLink(href: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: browsers skip these characters before a scheme
  const bare = href.replace(/[\u0000-\u0020\u007f-\u00a0]/g, "");
  return /^(https?:|mailto:|#)/i.test(bare) || !/^[^/?#]*:/.test(bare);
}

function safeAttributes(tag: string, source: string): string {
  let safe = "";
  for (const match of source.matchAll(/([a-zA-Z-]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'>]+)))?/g)) {
    const name = match[1].toLowerCase();
    const value = plainText(match[2] ?? match[3] ?? match[4] ?? "");
    if (ATTRIBUTES.has(name)) safe += ` ${name}="${escapeHtml(value)}"`;
    const aligned = /text-align:\s*(right|center)/.exec(value);
    if (name === "style" && aligned) safe += ` style="text-align:${aligned[1]}"`;
    if (tag === "a" && name === "href" && isSafeLink(value)) safe += ` href="${escapeHtml(value)}" rel="noreferrer"`;
  }
  return safe;
}

function textHtml(text: string): string {
  return escapeHtml(plainText(text));
}

/** Text with its character references read, as far as tables and notes use them; others stay as they are written. */
function plainText(text: string): string {
  return text.replace(
    /&(?:#(\d+)|#x([0-9a-f]+)|(amp|lt|gt|quot|apos|nbsp|deg|times|minus|plusmn|middot|ndash|mdash));/gi,
    (whole, decimal, hex, name) => {
      if (name) return NAMED[name.toLowerCase()] ?? whole;
      const code = decimal ? Number(decimal) : Number.parseInt(hex, 16);
      return code > 0 && code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff) ? String.fromCodePoint(code) : whole;
    },
  );
}

const NAMED: Record<string, string> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  nbsp: "\u00a0",
  deg: "°",
  times: "×",
  minus: "−",
  plusmn: "±",
  middot: "·",
  ndash: "–",
  mdash: "—",
};
