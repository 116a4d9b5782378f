import { describe, expect, it } from "vitest";
import { noticeLines } from "../../../../kernel-lib/library/src/check/notice";
import { slipLines } from "../../../../kernel-lib/library/src/check/slip";
import {
  CLASS_COLUMN,
  INGREDIENT_COLUMNS,
} from "../../../../kernel-lib/library/src/food/ingredient/ingredient-columns";
import {
  joinIngredients,
  parseIngredients,
  readIngredients,
} from "../../../../kernel-lib/library/src/food/ingredient/parse-ingredients";
import { INGREDIENTS } from "../kitchen-data";

const HEAD = INGREDIENT_COLUMNS.join(",");
const GOOD = 'pea,"peas, dry",00001,10,350,24,1,0.2,62,25,8,15,0,3,1 cup,196,,,a scale,,,,,,2.5,our scale';
const read = (...rows: string[]): ReturnType<typeof parseIngredients> =>
  parseIngredients([HEAD, ...rows].join("\n"), "mine.csv");

describe("parseIngredients", () => {
  it("reads a row, keeping blanks as not known", () => {
    const [pea] = read(GOOD.replace(",8,15,", ",,15,"));
    expect(pea.id).toBe("pea");
    expect(pea.name).toBe("peas, dry");
    expect(pea.ndb).toBe("00001");
    expect(pea.per100G.sugarsG).toBeNull();
    expect(pea.per100G.sodiumMg).toBe(15);
    expect(pea.householdWeights).toEqual([{ measure: "1 cup", massG: 196, source: "a scale" }]);
    expect(pea.energyFactors).toBeNull();
    expect(pea.costPerKg).toBe(2.5);
  });

  it("reads allergens with species and doubt", () => {
    const [pea] = read(GOOD.replace(",,,,2.5", ",,fish (cod); milk?,gluten (wheat),2.5"));
    expect(pea.allergensUs).toEqual([
      { allergen: "fish", species: "cod", certainty: "inherent" },
      { allergen: "milk", species: "", certainty: "depends on the maker" },
    ]);
    expect(pea.allergensEu[0].species).toBe("wheat");
  });

  it.each([
    [
      "a decimal comma",
      GOOD.replace(",350,", ',"350,5",'),
      'mine.csv row 2, column energy_kcal: expected a number or blank, got "350,5"',
    ],
    [
      "a sum that cannot be",
      GOOD.replace(",62,", ",82,"),
      "mine.csv row 2: expected water, protein, fat, carbohydrate and ash",
    ],
    [
      "a negative value",
      GOOD.replace(",15,", ",-15,"),
      "mine.csv row 2, column sodium_mg: expected 0 to 40000 mg in 100 g",
    ],
    ["a lost leading zero", GOOD.replace("00001", "1"), 'mine.csv row 2, column ndb: expected five digits, got "1"'],
    [
      "an unknown allergen",
      GOOD.replace(",,,,2.5", ",,fsh,,2.5"),
      'mine.csv row 2, column allergens_us: expected allergens among milk.*got "fsh"',
    ],
    [
      "a measure without grams",
      GOOD.replace(",196,", ",,"),
      "mine.csv row 2, column household_1: expected a measure and its grams together",
    ],
    [
      "a measure that is none",
      GOOD.replace("1 cup", "a cup"),
      'mine.csv row 2, column household_1: expected a measure such as "1 cup"',
    ],
    [
      "an id that is none",
      GOOD.replace("pea,", "p*a,"),
      "mine.csv row 2, column id: expected lower-case words joined by hyphens",
    ],
    ["a cell too many", `${GOOD},1`, "mine.csv row 2: expected 26 cells, got 27"],
  ])("names %s", (_, row, message) => {
    expect(() => read(row)).toThrow(new RegExp(message));
  });

  it("reads a class where the file has that column, and does without", () => {
    const classed = (cell: string): ReturnType<typeof parseIngredients>[number] =>
      parseIngredients(`${HEAD},${CLASS_COLUMN}\n${GOOD},${cell}`, "mine.csv")[0];
    expect(read(GOOD)[0].foodClass).toBeNull();
    expect(classed("").foodClass).toBeNull();
    expect(classed("plant").foodClass).toBe("plant");
    expect(classed("Ground meat").foodClass).toBe("groundMeat");
    expect(classed("wholeMeat").foodClass).toBe("wholeMeat");
    expect(classed("pasteurized").foodClass).toBe("pasteurised");
    expect(() => classed("bird")).toThrow(
      'mine.csv row 2, column class: expected one of poultry, ground meat, whole meat, egg, fish, plant, cooked, dried, pasteurised or blank, got "bird"',
    );
  });

  it("names every problem of a file at once", () => {
    let message = "";
    try {
      read(GOOD, GOOD, GOOD.replace("pea,", "oat,").replace(",350,", ",lots,"));
    } catch (error) {
      message = (error as Error).message;
    }
    expect(message).toContain('row 3, column id: expected each id once, and row 2 has this one, got "pea"');
    expect(message).toContain('row 4, column energy_kcal: expected a number or blank, got "lots"');
  });

  it("names a missing column", () => {
    expect(() => parseIngredients(`${HEAD.replace("id,", "")}\n`, "mine.csv")).toThrow(
      /^mine.csv row 1: expected a column id, the name that formulas use, got none$/,
    );
    expect(() => parseIngredients(`${HEAD.replace("protein_g", "protien_g")}\n`, "mine.csv")).toThrow(
      /^mine.csv row 1, column protien_g: expected a column of ingredients \(nearest: protein_g\)$/,
    );
  });

  it("reads the demo kitchen's table: at least 120 foods, every one with a source", () => {
    expect(INGREDIENTS.length).toBeGreaterThanOrEqual(120);
    expect(INGREDIENTS.every((one) => one.source.startsWith("USDA SR28"))).toBe(true);
    expect(INGREDIENTS.filter((one) => one.foodClass === null)).toEqual([]);
    expect(INGREDIENTS.every((one) => /^\d{5}$/.test(one.ndb ?? ""))).toBe(true);
  });
});

describe("readIngredients, of labels", () => {
  const LABEL =
    "id,class,serving,calories,total fat,saturated fat,trans fat,sodium,total carbohydrate,dietary fiber,protein";
  const label = (...rows: string[]) => readIngredients([LABEL, ...rows].join("\n"), "labels.csv");
  const PANKO = "My panko,plant,1/4 cup (30 g),110,0.5g,0g,0,60mg,23 g,<1 g,3 g";

  it("takes a label as a US pack prints it, to 100 g, its serving as a household weight, and water by difference", () => {
    const { ingredients, slips, notices } = label(PANKO);
    expect(slips).toEqual([]);
    expect(ingredients[0]).toMatchObject({
      id: "my-panko",
      name: "My panko",
      foodClass: "plant",
      householdWeights: [{ measure: "1/4 cup", massG: 30, source: "its label" }],
      source: "label, per 30 g",
      per100G: {
        energyKcal: expect.closeTo(366.67, 2),
        fatG: expect.closeTo(1.667, 3),
        carbohydrateG: expect.closeTo(76.67, 2),
        fibreG: expect.closeTo(1.667, 3),
        proteinG: 10,
        sodiumMg: 200,
        sugarsG: null,
        ashG: null,
        // 100 - 10 - 1.667 - 76.667 - 2.5 · 0.2 - 0.04 · 86.667
        waterG: expect.closeTo(7.7, 3),
      },
    });
    expect(noticeLines(notices)).toEqual([
      'labels.csv row 2, column id: was taken as an id, which has lower-case words joined by hyphens ("My panko" as my-panko)',
      'labels.csv row 2, column dietary fiber: is less than so much; half was taken ("<1 g" as 0.5)',
      "labels.csv row 2, column water_g: is not stated: water by difference was taken (8 g in 100 g, give or take 4, for my-panko)",
    ]);
  });

  it("takes a label as an EU pack prints it: per 100 g, energy in kJ, fibre apart, salt", () => {
    const { ingredients, slips } = readIngredients(
      "id,energy_kj,fat_g,carbohydrate_without_fibre_g,fibre_g,protein_g,salt_g\nrusk,1700,5,70,4,12,1.25\n",
      "labels.csv",
    );
    expect(slips).toEqual([]);
    expect(ingredients[0].per100G).toMatchObject({
      energyKcal: expect.closeTo(406.3, 1),
      carbohydrateG: 74,
      sodiumMg: 500,
      waterG: expect.closeTo(100 - 5 - 74 - 12 - 1.25 - 0.04 * 86, 9),
    });
    const ounces = readIngredients("id,serving_oz,fat,carbs,protein\nham,2,2,1,10\n", "labels.csv");
    expect(ounces.ingredients[0].per100G.proteinG).toBeCloseTo(1000 / 56.699, 3);
  });

  it.each([
    [
      "30 g",
      "3 g",
      /^labels\.csv row 2, column serving: expected the serving that the values are of: with 3 g, protein, fat and carbohydrate would be 883 g in 100 g, got "1\/4 cup \(3 g\)"$/,
    ],
    [
      "110",
      "250",
      /^labels\.csv row 2, column calories: expected near the 362 kcal .*is it kJ\?\), and the values are of 30 g, got 833 kcal in 100 g$/,
    ],
    [
      "110",
      "460",
      /^labels\.csv row 2, column calories: expected 0 to 910 kcal in 100 g .*, and the values are of 30 g, got "460"$/,
    ],
    [
      "1/4 cup (30 g)",
      "1/4 cup",
      /^labels\.csv row 2, column serving: expected a serving with its mass, such as "30 g" .*, got "1\/4 cup"$/,
    ],
    [",3 g", ",three", /^labels\.csv row 2, column protein: expected a number or blank, got "three"$/],
  ])("names what cannot be: %s as %s", (from, to, line) => {
    expect(slipLines(label(PANKO.replace(from, to)).slips)).toEqual([expect.stringMatching(line)]);
  });

  it("joins tables, an id once", () => {
    const joined = joinIngredients([
      readIngredients(`${HEAD}\n${GOOD}`, "mine.csv"),
      label(PANKO, PANKO.replace("My panko", "Pea")),
    ]);
    expect(joined.ids).toEqual(["pea", "my-panko"]);
    expect(slipLines(joined.slips)).toEqual([
      'labels.csv row 3, column id: expected each id once, and mine.csv row 2 has this one, got "pea"',
    ]);
  });

  it("reads allergens as packs print them", () => {
    const [{ allergensUs }] = parseIngredients('id,contains\nrusk,"Milk, Eggs; soybeans?"\n', "l.csv");
    expect(allergensUs.map(({ allergen, certainty }) => [allergen, certainty])).toEqual([
      ["milk", "inherent"],
      ["egg", "inherent"],
      ["soy", "depends on the maker"],
    ]);
  });
});
