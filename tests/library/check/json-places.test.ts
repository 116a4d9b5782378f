import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonPlaces } from "../../../kernel-lib/library/src/check/json-places";

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe("jsonPlaces", () => {
  it("finds the line of every value", () => {
    const { lineOf, fault } = jsonPlaces(
      '{\n  "mix": [\n    { "amount": "1 g" },\n    {\n      "amount":\n"2 g" }\n  ]\n}\n',
    );
    expect(fault).toBeNull();
    expect(Object.fromEntries(lineOf)).toEqual({
      "": 1,
      mix: 2,
      "mix.0": 3,
      "mix.0.amount": 3,
      "mix.1": 4,
      "mix.1.amount": 6,
    });
  });

  it.each([
    ["", 1, 'a number with a decimal point, a text in double quotes, "{" or "["', "the end of the file"],
    ['{\n  "a": 1,\n}', 3, "a name in double quotes", '"}"'],
    ['{\n  "a": 1\n  "b": 2\n}', 3, 'a comma "," before the next name, or the closing "}"', '"\\"b\\""'],
    ['{\n  "a": [1, 2\n}', 3, 'a comma "," before the next entry, or the closing "]"', '"}"'],
    ['{ "a" 1 }', 1, 'a colon ":" after the name', '"1"'],
    ["{ 'a': 1 }", 1, "a name in double quotes", "\"'a'\""],
    ['{\n"a": "one\ntwo" }', 2, "a text in double quotes that ends on its line", '"\\"one"'],
    ['{ "a": 1,5 }', 1, "a name in double quotes", '"5"'],
    ['{ "a": .5 }', 1, 'a number with a decimal point, a text in double quotes, "{" or "["', '".5"'],
    ["{}\n{}", 2, "nothing after the end of the JSON", '"{"'],
    ["[".repeat(80), 1, "at most 50 levels", '"["'],
  ])("says where %j stops being JSON", (text, line, expected, got) => {
    expect(jsonPlaces(text).fault).toEqual({ line, at: expect.any(Number), expected, got });
  });

  it("agrees with the engine about what is JSON, whole or with one character lost or changed", () => {
    const values = fc.jsonValue({ maxDepth: 4 }).map((value) => JSON.stringify(value, null, 1));
    fc.assert(
      fc.property(values, fc.nat(), fc.constantFrom("", ",", '"', "}", "]", "1", "\n", "\\"), (text, at, instead) => {
        expect(jsonPlaces(text).fault).toBeNull();
        const place = at % text.length;
        const damaged = text.slice(0, place) + instead + text.slice(place + 1);
        expect(jsonPlaces(damaged).fault === null).toBe(parses(damaged));
      }),
      { numRuns: 300 },
    );
  });
});
