import type { Note } from "./note";
import { wrapText } from "./wrap-text";

/** A note as plain text, lines of at most `width` characters, lists indented under their headings. */
export function noteText({ title, mark, parts }: Note, width: number = 80): string {
  const indented = (text: string, first: string, rest: string): string[] =>
    wrapText(text, width - rest.length).map((line, at) => `${at === 0 ? first : rest}${line}`);
  return [
    ...wrapText(mark === null ? title : `${title} [${mark}]`, width),
    ...parts.flatMap((part) => {
      if (typeof part === "string") return part === "" ? [] : indented(part, "  ", "  ");
      if (part.items.length === 0) return [];
      const heading = part.heading === null ? [] : indented(part.heading, "  ", "  ");
      return [...heading, ...part.items.flatMap((item) => indented(item, "    - ", "      "))];
    }),
  ].join("\n");
}
