import fc from "fast-check";
import { expect, it } from "vitest";
import { wordAt } from "../../../kernel-lib/host/page/word-at";

it.each([
  ["show(crispWindow({ kitchen }))", 7, "crispWindow"],
  ["show(crispWindow({ kitchen }))", 5, "crispWindow"],
  ["show(crispWindow({ kitchen }))", 16, "crispWindow"],
  ["show(crispWindow({ kitchen }))", 17, "crispWindow"],
  ["show(crispWindow({ kitchen }), ", 31, "show"],
  ["const a = (1 + 2) ", 18, ""],
  ["", 0, ""],
])("%s at %i", (code, offset, word) => {
  expect(wordAt(code, offset)).toBe(word);
});

it("finds a word from each of its places", () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[A-Za-z]\w{0,8}$/), fc.nat(9), (word, at) => {
      expect(wordAt(`1 + ${word}(2)`, 4 + Math.min(at, word.length))).toBe(word);
    }),
  );
});
