import { Marked } from "marked";
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
 * Markdown as HTML for a page that must not run or fetch anything: HTML in the text is shown as text, links go only
 * to the web, to e-mail or beside the page, pictures only from the cell's own attachments or data addresses.
 */
export function renderMarkdown(
  text: string,
  options: MarkdownOptions,
): { readonly html: string; readonly headings: Heading[] } {
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

const PICTURE = /^image\/(png|jpeg|gif|webp)$/;

function pictureSource(href: string, attachments: NonNullable<MarkdownOptions["attachments"]>): string | null {
  if (/^data:image\/(png|jpeg|gif|webp);base64,[A-Za-z0-9+/=]+$/.test(href)) return href;
  if (!href.startsWith("attachment:")) return null;
  for (const [mime, value] of Object.entries(attachments[href.slice("attachment:".length)] ?? {})) {
    const base64 = String(value).replace(/\s/g, "");
    if (PICTURE.test(mime) && /^[A-Za-z0-9+/=]+$/.test(base64)) return `data:${mime};base64,${base64}`;
  }
  return null;
}
