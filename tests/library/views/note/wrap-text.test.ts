import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wrapText } from "../../../../kernel-lib/library/src/views/note/wrap-text";

describe("wrapText", () => {
  it("keeps every character in its order, in lines that are not too long", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), fc.integer({ min: 8, max: 40 }), (text, width) => {
        const lines = wrapText(text, width);
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
        expect(lines.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
      }),
    );
  });

  it("keeps a number and its unit together, and words whole that fit", () => {
    expect(wrapText("at most 60 % of the floor", 10)).toEqual(["at most", "60 % of", "the floor"]);
    expect(wrapText("set 200 °C now", 9)).toEqual(["set", "200 °C", "now"]);
    expect(wrapText("", 10)).toEqual([""]);
  });
});
