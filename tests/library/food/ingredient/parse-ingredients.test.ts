import { describe, expect, it } from "vitest";
import {
  CLASS_COLUMN,
  INGREDIENT_COLUMNS,
  parseIngredients,
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
      'mine.csv row 2, column sodium_mg: expected number to be >=0, got "-15"',
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
      "an id with capitals",
      GOOD.replace("pea,", "Pea,"),
      "mine.csv row 2, column id: expected lower-case words joined by hyphens",
    ],
    ["no source", GOOD.replace(",our scale", ","), "mine.csv row 2, column source: expected"],
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
    expect(() => parseIngredients(`${HEAD.replace(",fibre_g", "")}\n`, "mine.csv")).toThrow(
      "mine.csv row 1: expected a column fibre_g, got none",
    );
    expect(() => parseIngredients(`${HEAD.replace("fibre_g", "fiber_g")}\n`, "mine.csv")).toThrow(
      /^mine.csv row 1: expected a column fibre_g, got none \(nearest: fiber_g\)$/,
    );
  });

  it("reads the demo kitchen's table: at least 120 foods, every one with a source", () => {
    expect(INGREDIENTS.length).toBeGreaterThanOrEqual(120);
    expect(INGREDIENTS.every((one) => one.source.startsWith("USDA SR28"))).toBe(true);
    expect(INGREDIENTS.filter((one) => one.foodClass === null)).toEqual([]);
    expect(INGREDIENTS.every((one) => /^\d{5}$/.test(one.ndb ?? ""))).toBe(true);
  });
});
