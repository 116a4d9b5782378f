import type { Answer, Answers } from "../../advice/answer/answers";
import type { Note } from "../note/note";

/** A note a product: what to do and how sure that is, what to look at in its log, what comes next. */
export function answerNotes({ products }: Answers): readonly Note[] {
  return products.map(noteOf);
}

function noteOf({ variantName, state, missing, sentences, notices, steps }: Answer): Note {
  return {
    kind: "note",
    title: variantName,
    mark: missing === null ? state : `${state}: ${missing}`,
    good: state === "ready",
    parts: [sentences.join(" "), { heading: "Next", items: steps }, { heading: "Look at", items: notices }],
  };
}
