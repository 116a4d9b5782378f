import type { ReheatCard } from "../../advice/card/reheat-card";
import type { Note } from "../note/note";

/** A reheat card as a note: its lines to be printed, the caution last; below, what stands against printing it. */
export function cardNote({ title, lines, ready, why, missing }: ReheatCard): Note {
  return {
    kind: "note",
    title,
    mark: ready ? "ready" : "not ready",
    good: ready,
    parts: [
      { heading: null, items: lines.slice(0, -1) },
      lines[lines.length - 1],
      { heading: "Not ready, because", items: why },
      { heading: "To do first", items: missing },
    ],
  };
}
