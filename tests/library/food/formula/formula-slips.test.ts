import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { slipLines } from "../../../../kernel-lib/library/src/check/slip";
import { formulaSlips } from "../../../../kernel-lib/library/src/food/formula/formula-slips";
import { readFormula } from "../../../../kernel-lib/library/src/food/formula/read-formula";
import { readIngredients } from "../../../../kernel-lib/library/src/food/ingredient/parse-ingredients";

const GOOD = readFileSync("data/formulas/beet-lentil.json", "utf8");
const TABLE = readIngredients(readFileSync("data/ingredients.csv", "utf8"), "ingredients.csv");
const lines = (from: string, to: string, table = TABLE): readonly string[] => {
  const read = readFormula(GOOD.replaceAll(from, to), "a.json");
  expect(read.slips).toEqual([]);
  return slipLines(formulaSlips({ read, ...table, file: "ingredients.csv" }));
};

describe("formulaSlips", () => {
  it("finds nothing in a sound formula, nor in one that is not read", () => {
    expect(lines("", "")).toEqual([]);
    expect(formulaSlips({ read: readFormula("{", "a.json"), ...TABLE, file: "i.csv" })).toEqual([]);
  });

  it("names each ingredient that the kitchen has not, with its line and the nearest", () => {
    expect(lines('"beets-cooked"', '"beet-cooked"')).toEqual([
      'a.json line 8, mix.0.ingredient: expected an ingredient of ingredients.csv, got "beet-cooked" (nearest: beets-cooked)',
    ]);
    expect(lines('-cooked"', '-boild"')).toHaveLength(2);
    expect(lines('"oil-sunflower"', '"zzz"')).toEqual([
      expect.stringMatching(/^a\.json line \d+, coating\.0\.lines\.0\.ingredient: .*, got "zzz"$/),
    ]);
  });

  it.each([
    [
      "460 g",
      "460",
      /mix\.0\.amount: expected an amount, which must say of what, such as "460 g" or "2 large", got "460"$/,
    ],
    ["460 g", "lots", /mix\.0\.amount: expected an amount, which must begin with a number .*, got "lots"$/],
    ["460 g", "46,0 g", /no comma\), got "46,0 g"$/],
    ["460 g", "0 g", /expected an amount, which must be > 0 g, got "0 g"$/],
    ["1/2 cup chopped", "1/2 pinch", /mix\.3\.amount: .*weigh it.*, got "1\/2 pinch"$/],
  ])("says of the amount %s, given as %s, what it must be", (amount, instead, line) => {
    expect(lines(`"${amount}"`, `"${instead}"`)).toEqual([expect.stringMatching(line)]);
  });

  it("says what does not add up in percentages", () => {
    expect(lines('"460 g"', '"120 % of mix"')).toEqual([
      expect.stringMatching(
        /^a\.json: expected a formula that adds up: .*must sum to less than 100 beside weighed lines, got 120$/,
      ),
    ]);
    expect(lines('"460 g"', '"3 %"')).toEqual([expect.stringMatching(/must say what the percentage is of/)]);
  });

  it("misses no ingredient while some of the table could not be read", () => {
    expect(lines('"beets-cooked"', '"beet-cooked"', { ...TABLE, whole: false })).toEqual([]);
    const others = TABLE.ingredients.filter(({ id }) => id !== "beets-cooked");
    expect(lines("", "", { ...TABLE, ingredients: others })).toEqual([]);
  });
});
