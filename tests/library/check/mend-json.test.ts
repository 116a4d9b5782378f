import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mendJson } from "../../../kernel-lib/library/src/check/mend-json";

describe("mendJson", () => {
  it.each([
    ['{\n "a": 1,\n}', 2, 'no comma before the closing "}"', { a: 1 }],
    ['{ "a": [1, 2,] }', 1, 'no comma before the closing "]"', { a: [1, 2] }],
    ['{ "a": 1,, "b": 2 }', 1, "one comma, not two", { a: 1, b: 2 }],
    ['{\n "a": 1\n "b": 2 }', 3, 'a comma "," before it', { a: 1, b: 2 }],
    ['{ "a": [1, 2 }', 1, 'a closing "]" before it', { a: [1, 2] }],
    ['{ "a": [1, 2]', 1, 'a closing "}" before it', { a: [1, 2] }],
    ['{ "a" [1] }', 1, 'a colon ":" before it', { a: [1] }],
    ["{ 'a': 1 }", 1, "a name in double quotes", { a: 1 }],
    ["{ a: 1 }", 1, "a name in double quotes", { a: 1 }],
  ])("mends %j", (text, line, expected, meant) => {
    const { text: mended, fault, slips } = mendJson(text);
    expect(fault).toBeNull();
    expect(JSON.parse(mended)).toEqual(meant);
    expect(slips).toEqual([{ line, expected, got: expect.any(String) }]);
  });

  it("mends several, and leaves what may be meant in two ways", () => {
    expect(mendJson('{ "a": [1 2,],, "b": 3,').slips).toHaveLength(5);
    for (const text of ["", '{ "a": one }', '{ "a": "x }', "{} {}"])
      expect(mendJson(text)).toMatchObject({ slips: [], text, fault: { line: 1 } });
  });

  it("leaves what is JSON alone, and finds again what loses a comma that a line ends in", () => {
    fc.assert(
      fc.property(
        fc.dictionary(fc.stringMatching(/^[a-z]{1,5}$/), fc.array(fc.nat(99)), { minKeys: 1 }),
        fc.nat(),
        (value, at) => {
          const text = JSON.stringify(value, null, 1);
          expect(mendJson(text)).toMatchObject({ text, slips: [] });
          const commas = [...text.matchAll(/,/g)].map(({ index }) => index);
          if (commas.length === 0) return;
          const lost = commas[at % commas.length];
          const { text: mended, slips } = mendJson(text.slice(0, lost) + text.slice(lost + 1));
          expect(JSON.parse(mended)).toEqual(value);
          expect(slips).toHaveLength(1);
        },
      ),
      { numRuns: 50 },
    );
  });
});
