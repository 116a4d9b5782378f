import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  byLength,
  type EffectWord,
  productsOf,
  readWord,
  signAt,
  timesWord,
  wordLength,
  wordText,
} from "../../../../kernel-lib/library/src/plan/standard/effect-words";

const words = fc.record({
  mask: fc.integer({ min: 1, max: 2 ** 15 - 1 }),
  sign: fc.constantFrom(1 as const, -1 as const),
});
const points = fc.array(fc.constantFrom(-1, 1), { minLength: 15, maxLength: 15 });

describe("effect words", () => {
  it("are read as they are written", () => {
    fc.assert(
      fc.property(words, (word) => {
        expect(readWord("here", wordText(word), 15)).toEqual(word);
        expect(wordLength(word)).toBe(wordText(word).replace("-", "").length);
      }),
    );
    expect(readWord("here", "AJ", 15).mask).toBe(1 | (1 << 8)); // no I: J is the ninth
  });

  it("multiply as the signs at any point do", () => {
    fc.assert(
      fc.property(words, words, points, (one, other, point) => {
        expect(signAt(timesWord(one, other), point)).toBe(signAt(one, point) * signAt(other, point));
      }),
    );
  });

  it("give all products, and sort short ones first", () => {
    const read = ["AB", "CD", "-AE"].map((text) => readWord("here", text, 5));
    const texts = productsOf(read)
      .toSorted(byLength)
      .map((word: EffectWord) => wordText(word));
    expect(texts).toEqual(["AB", "-AE", "-BE", "CD", "ABCD", "-ACDE", "-BCDE"]);
  });

  it("refuse strange letters, a letter twice, and nothing", () => {
    expect(() => readWord("here", "AI", 9)).toThrow("here must be made of the letters ABCDEFGHJ");
    expect(() => readWord("here", "AF", 3)).toThrow("must be made of the letters ABC");
    expect(() => readWord("here", "ABA", 3)).toThrow("each letter once");
    expect(() => readWord("here", "-", 3)).toThrow("at least one letter");
  });
});
