import { type Notebook, textOf } from "./notebook";

/** How much of a notebook's opening is looked at. */
const LONGEST_OPENING = 4000;

/**
 * What stands under a title: the first question of the notebook's opening when the title asks none, or else as many of
 * its first sentences as fit in about two lines. At most 200 characters.
 */
export function leadOf(notebook: Notebook, title: string): string {
  const opening = notebook.cells.find((cell) => cell.cell_type === "markdown");
  const source = opening ? textOf(opening.source).slice(0, LONGEST_OPENING) : "";
  const plain = source
    .replace(/^#.*$/gm, "")
    .replace(/\[([^[\]]*)\]\([^()]*\)/g, "$1")
    .replace(/[*_`]/g, "")
    .trim();
  const sentences =
    plain
      .split(/\n[ \t\r]*\n/)[0]
      .replace(/\s+/g, " ")
      .match(/(?:[^.!?]|[.!?](?! |$))+[.!?]?\s*/g) ?? [];
  const question = sentences.find((sentence) => sentence.trim().endsWith("?"));
  if (question && !title.includes("?")) return cut(question);
  let lead = sentences[0] ?? "";
  for (const sentence of sentences.slice(1)) {
    if (lead.length + sentence.length > 130) break;
    lead += sentence;
  }
  return cut(lead);
}

function cut(lead: string): string {
  return lead.length > 200 ? `${lead.slice(0, 197)}…` : lead.trim();
}
