import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { noteHtml } from "../../../../kernel-lib/library/src/views/note/note-html";
import { noteText } from "../../../../kernel-lib/library/src/views/note/note-text";

const word = fc.string({ minLength: 1, unit: "grapheme-ascii" });
const note = fc.record({
  kind: fc.constant("note" as const),
  title: word,
  mark: fc.option(word),
  good: fc.boolean(),
  parts: fc.array(fc.oneof(word, fc.record({ heading: fc.option(word), items: fc.array(word, { minLength: 1 }) }))),
});
const bare = (text: string): string => text.replace(/\s/g, "");

describe("noteText", () => {
  it("fits its width and loses no text", () => {
    fc.assert(
      fc.property(note, fc.integer({ min: 30, max: 90 }), (one, width) => {
        const text = noteText(one, width);
        for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(width);
        const texts = one.parts.flatMap((part) =>
          typeof part === "string" ? [part] : [part.heading ?? "", ...part.items],
        );
        for (const each of [one.title, one.mark ?? "", ...texts]) expect(bare(text)).toContain(bare(each));
      }),
    );
  });

  it("indents lists under their headings, and passes over empty ones", () => {
    const parts = ["Do it.", { heading: "Next", items: ["one", "two"] }, { heading: "Never", items: [] }];
    expect(noteText({ kind: "note", title: "bars", mark: "ready", good: true, parts })).toBe(
      "bars [ready]\n  Do it.\n  Next\n    - one\n    - two",
    );
  });
});

describe("noteHtml", () => {
  it("escapes every text, and marks what is not well", () => {
    const text = "<b>&";
    const html = noteHtml({
      kind: "note",
      title: text,
      mark: text,
      good: false,
      parts: [text, { heading: text, items: [text] }],
    });
    expect(html).not.toContain("<b>");
    expect(html.match(/&lt;b&gt;&amp;/g)).toHaveLength(5);
    expect(html).toContain("<mark>");
  });
});
