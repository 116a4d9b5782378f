import { describe, expect, it } from "vitest";
import { slipLines } from "../../../kernel-lib/library/src/check/slip";
import { readKitchenJson } from "../../../kernel-lib/library/src/trials/kitchen-json";

const read = (text: string) => readKitchenJson(text, "kitchen.json");
const lines = (text: string): readonly string[] => slipLines(read(text).slips);

describe("readKitchenJson", () => {
  it("reads the name and the units, and lets remarks of other names stand", () => {
    expect(read('{ "name": "Mine", "units": "us" }')).toEqual({ name: "Mine", units: "us", language: "en", slips: [] });
    expect(read('\ufeff{ "name": "Mine", "started": 2025, "about": "x" }')).toEqual({
      name: "Mine",
      units: null,
      language: "en",
      slips: [],
    });
  });

  it("reads the language of cards, and refuses one that there is none of", () => {
    expect(read('{ "name": "Mine", "units": "us", "language": "es" }')).toMatchObject({ language: "es", slips: [] });
    expect(lines('{ "name": "Mine", "units": "us", "language": "fr" }')).toEqual([
      'kitchen.json line 1, language: expected "en" or "es", for cards and labels, got "fr"',
    ]);
  });

  it("takes a name that is near to one that is there for a remark", () => {
    expect(read('{ "name": "Mine", "names": "ours", "units": "us", "unit": "oz" }')).toEqual({
      name: "Mine",
      units: "us",
      language: "en",
      slips: [],
    });
  });

  it.each([
    ['{\n "name": ""\n}', 'kitchen.json line 2, name: expected a text that names the kitchen, got ""'],
    [
      '{ "name": "a\\u001b[2J" }',
      'kitchen.json line 1, name: expected a text that names the kitchen without control characters, got "a\\u001b[2J"',
    ],
    ["{}", "kitchen.json line 1, name: expected a text that names the kitchen, got none"],
    ["[]", 'kitchen.json line 1: expected a name in braces, such as { "name": "My kitchen" }'],
    ['{\n "Name": "Mine" }', "kitchen.json line 2, Name: expected name, units, language or about (nearest: name)"],
    [
      '{ "name": "M",\n "unit": "us" }',
      "kitchen.json line 2, unit: expected name, units, language or about (nearest: units)",
    ],
    [
      '{ "name": "M",\n "units": "US" }',
      'kitchen.json line 2, units: expected "us" or "metric", got "US" (nearest: us)',
    ],
    ['{ "name": "M", "units": 5 }', 'kitchen.json line 1, units: expected "us" or "metric", got 5'],
    ['{ "name": "M",\n}', 'kitchen.json line 1: expected JSON: no comma before the closing "}", got "}"'],
  ])("says of %j what is wrong", (text, line) => {
    expect(lines(text)).toEqual([line]);
  });
});
