import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { slipLines } from "../../../../../kernel-lib/library/src/check/slip";
import { formulaSlips } from "../../../../../kernel-lib/library/src/food/formula/read/formula-slips";
import { readFormula } from "../../../../../kernel-lib/library/src/food/formula/read/read-formula";
import { readIngredients } from "../../../../../kernel-lib/library/src/food/ingredient/parse-ingredients";
import { loadFoods } from "../../../../../kernel-lib/library/src/notebook/load-foods";

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

  const whole = (mass: string): readonly string[] => lines('"mix": [', `"cookedG": ${mass},\n  "mix": [`);
  it.each([
    [
      "2000",
      /^a\.json line 7, cookedG: expected a cooked mass, which must be at most the 1250\.\d g that went in; .* line of its own, got 2000$/,
    ],
    [
      '"10 oz"',
      /^a\.json line 7, cookedG: expected a cooked mass, which must be at least \d+\.\d g, as only .* are water, got "10 oz"$/,
    ],
  ])("says what a mix cooked down to %s must weigh", (mass, line) => {
    expect(whole(mass)).toEqual([expect.stringMatching(line)]);
  });

  it("takes a cooked mass that water explains", () => {
    expect(whole("1100")).toEqual([]);
    expect(whole('"2 lb 8 oz"')).toEqual([]);
  });

  it.each([
    ["-3", /line 7, cookedG: expected a mass such as 870 \(grams\), "870 g" or "1 lb 15 oz".*, got -3$/],
    ['"2 cups"', /line 7, cookedG: expected a mass such as/],
    ['{ "pot-a": "1 cup" }', /line 7, cookedG\.pot-a: expected a mass such as .*, got "1 cup"$/],
    [
      '{ "pot-a": 200 }',
      /line 7, cookedG: expected pots that lines of the mix are in \("pot": "pot-a" stands on none\)$/,
    ],
    ["[200]", /line 7, cookedG: expected a mass such as/],
  ])("finds in the file alone what is wrong with %s", (mass, line) => {
    const { slips } = readFormula(GOOD.replace('"mix": [', `"cookedG": ${mass},\n  "mix": [`), "a.json");
    expect(slipLines(slips)).toEqual([expect.stringMatching(line)]);
  });

  it("names a pot that has no mass, with the nearest that has, and lets no coating be cooked down", () => {
    const pot = GOOD.replace('"460 g"', '"460 g", "pot": "bas"').replace('"420 g"', '"420 g", "pot": "base"');
    const withMass = pot.replace('"mix": [', '"cookedG": { "base": 400 },\n  "mix": [');
    expect(slipLines(readFormula(withMass, "a.json").slips)).toEqual([
      'a.json line 9, mix.0.pot: expected a pot whose mass stands in cookedG by its name, got "bas" (nearest: base)',
    ]);
    const coated = GOOD.replace('"amount": "100 g"', '"amount": "100 g", "pot": "base"');
    expect(slipLines(readFormula(coated, "a.json").slips)).toEqual([
      expect.stringMatching(/coating\.0\.lines\.0\.pot: /),
    ]);
  });

  it("misses no ingredient while some of the table could not be read", () => {
    expect(lines('"beets-cooked"', '"beet-cooked"', { ...TABLE, whole: false })).toEqual([]);
    const others = TABLE.ingredients.filter(({ id }) => id !== "beets-cooked");
    expect(lines("", "", { ...TABLE, ingredients: others })).toEqual([]);
  });

  it("gives the row of the food that is most likely meant, or says how a label is added", () => {
    const hinted = (name: string): string => {
      const read = readFormula(`ingredient,amount\n${name},1 lb\n`, "a.csv");
      return slipLines(formulaSlips({ read, ...TABLE, file: "ingredients.csv", foods: loadFoods }))[0];
    };
    expect(hinted("Rutabagas raw")).toMatch(
      /^a\.csv row 2, column ingredient: expected an ingredient of ingredients\.csv, got "Rutabagas raw".*; for "Rutabagas, raw" .*paste this row into ingredients\.csv and fill in its class: rutabagas-raw,"Rutabagas, raw",11435,/,
    );
    expect(hinted("zzz")).toMatch(
      /got "zzz"; add it to labels\.csv as its pack prints it, or give it the name of an ingredient/,
    );
  });

  it("asks for what a mix cannot be made of without, at the ingredient's own row", () => {
    const table = readIngredients(
      "id,serving_g,fat,carbs,protein,sodium\nrusk,30,1,20,,10\nbaking-powder,100,0,28,0,10600\nherb,0.5,0,0,0,0\n",
      "labels.csv",
    );
    const read = readFormula("ingredient,amount\nrusk,1 lb\nbaking-powder,1 oz\nherb,1 g\n", "a.csv");
    expect(slipLines(formulaSlips({ read, ...table, file: "labels.csv" }))).toEqual([
      "labels.csv row 2: expected protein_g of rusk, as it is in a.csv; 0 where its pack says 0, got blank",
      "labels.csv row 3: expected water_g, as 27 g of 100 g are salt and its ash is not known (0 for a dry salt); baking-powder is in a.csv, got blank",
      "labels.csv row 4: expected water_g, as a serving of 0.5 g is too small to tell it (± 150 g in 100 g); herb is in a.csv, got blank",
    ]);
  });
});
