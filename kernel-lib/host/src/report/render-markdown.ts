import { Marked } from "marked";
import { bundleText } from "../notebook/notebook";
import { escapeHtml } from "./escape";
import { maths } from "./maths";
import { isSafeLink } from "./safe-html";

/** What `renderMarkdown` needs beside the text. */
export interface MarkdownOptions {
  /** stands before every heading's id, so that two notebooks on one page do not share one */
  readonly prefix: string;
  /** pictures that the cell carries: name, then MIME type, then base64 */
  readonly attachments?: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  /** how many levels headings go down: 1 makes `#` an `<h2>`; 0 */
  readonly lower?: number;
}

/** A heading that markdown text holds. */
export interface Heading {
  readonly level: number;
  readonly text: string;
  readonly id: string;
}

/**
 * The longest text that is read as markdown, its pictures apart: our judgement, some seven printed pages in one cell.
 * marked takes time in the square of the length on some texts (`*a*a*a…`: 0.1 s for these, 19 s for 400,000).
 */
const LONGEST = 20_000;

/**
 * Markdown as HTML for a page that must not run or fetch anything: HTML in the text is shown as text, links go only
 * to the web, to e-mail or beside the page, pictures only from the cell's own attachments or data addresses. Text that
 * is too long, or that marked breaks on (nested deeper than the stack), is shown as it is written.
 */
export function renderMarkdown(
  text: string,
  options: MarkdownOptions,
): { readonly html: string; readonly headings: Heading[] } {
  if (text.replace(DATA_PICTURE, "").length > LONGEST) return asWritten(text, "longer than 20,000 characters");
  try {
    return rendered(text, options);
  } catch (error) {
    const why = error instanceof RangeError ? "nested too deep" : "that its reader does not bear";
    return asWritten(text, why);
  }
}

function asWritten(text: string, why: string): ReturnType<typeof renderMarkdown> {
  const note = `<p class="absent">[text ${why}, shown as it is written]</p>`;
  return { html: `${note}<pre class="out">${escapeHtml(text)}</pre>`, headings: [] };
}

function rendered(text: string, options: MarkdownOptions): ReturnType<typeof renderMarkdown> {
  const headings: Heading[] = [];
  const marked = new Marked(maths, {
    renderer: {
      html: ({ text }) => escapeHtml(text),
      heading({ tokens, depth, text }) {
        const plain = text.replace(/[*_`]/g, "");
        const id = `${options.prefix}-${headings.length + 1}`;
        headings.push({ level: depth, text: plain, id });
        const level = Math.min(6, depth + (options.lower ?? 0));
        return `<h${level} id="${id}">${this.parser.parseInline(tokens)}</h${level}>\n`;
      },
      link({ href, tokens }) {
        const inner = this.parser.parseInline(tokens);
        return isSafeLink(href) ? `<a href="${escapeHtml(href)}" rel="noreferrer">${inner}</a>` : inner;
      },
      image({ href, text }) {
        const source = pictureSource(href, options.attachments ?? {});
        const words = escapeHtml(text);
        return source ? `<img src="${source}" alt="${words}">` : `<span class="absent">[picture: ${words}]</span>`;
      },
    },
  });
  return { html: marked.parse(text, { async: false }), headings };
}

const DATA_PICTURE = /data:image\/[a-z]{1,9};base64,[A-Za-z0-9+/=]+/g;
const PICTURE = /^image\/(png|jpeg|gif|webp)$/;

function pictureSource(href: string, attachments: NonNullable<MarkdownOptions["attachments"]>): string | null {
  if (/^data:image\/(png|jpeg|gif|webp);base64,[A-Za-z0-9+/=]+$/.test(href)) return href;
  if (!href.startsWith("attachment:")) return null;
  const name = href.slice("attachment:".length);
  if (!Object.hasOwn(attachments, name)) return null;
  for (const mime of Object.keys(attachments[name])) {
    const base64 = (bundleText(attachments[name], mime) ?? "").replace(/\s/g, "");
    if (PICTURE.test(mime) && /^[A-Za-z0-9+/=]+$/.test(base64)) return `data:${mime};base64,${base64}`;
  }
  return null;
}
