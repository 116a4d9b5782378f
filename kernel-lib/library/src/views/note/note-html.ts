import { escapeHtml } from "../table/escape-html";
import type { Note } from "./note";

/** A note as HTML: a quoted block with its title, paragraphs and lists; every text escaped. */
export function noteHtml({ title, mark, good, parts }: Note): string {
  const tag = good ? "strong" : "mark";
  const beside = mark === null ? "" : ` <${tag}>${escapeHtml(mark)}</${tag}>`;
  const body = parts.flatMap((part) => {
    if (typeof part === "string") return `<p>${escapeHtml(part)}</p>`;
    if (part.items.length === 0) return [];
    const heading = part.heading === null ? "" : `<p><strong>${escapeHtml(part.heading)}</strong></p>`;
    return `${heading}<ul>${part.items.map((item) => `<li>${escapeHtml(item)}</li>`).join("")}</ul>`;
  });
  return `<blockquote><h4>${escapeHtml(title)}${beside}</h4>${body.join("\n")}</blockquote>`;
}
