import { describe, expect, it } from "vitest";
import { formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { parseFormula } from "../../../../kernel-lib/library/src/food/formula/read/parse-formula";
import { ingredientFromFood } from "../../../../kernel-lib/library/src/food/ingredient/ingredient-from-food";
import { parseSr28 } from "../../../../kernel-lib/library/src/food/ingredient/parse-sr28";
import { searchFoods } from "../../../../kernel-lib/library/src/food/ingredient/search-foods";
import { loadFoods } from "../../../../kernel-lib/library/src/notebook/load-foods";

const first = (query: string): string => searchFoods(loadFoods(), query)[0].food.description;

describe("searchFoods", () => {
  it.each([
    ["salt", "Salt, table"],
    ["egg white raw", "Egg, white, raw, fresh"],
    ["beet raw", "Beets, raw"],
    ["oats regular quick dry", "Cereals, oats, regular and quick, not fortified, dry"],
    ["ground turkey raw", "Ground turkey, raw"],
    ["chickpea flour", "Chickpea flour (besan)"],
    ["cornstarch", "Cornstarch"],
  ])("puts the plain food first: %s", (query, description) => {
    expect(first(query)).toBe(description);
  });

  it("finds plurals, beginnings and numbers", () => {
    expect(first("carrots raw")).toBe("Carrots, raw");
    expect(first("carrot raw")).toBe("Carrots, raw");
    expect(searchFoods(loadFoods(), "zucch").length).toBeGreaterThan(3);
    expect(first("16069")).toBe("Lentils, raw");
  });

  it("ranks, limits and finds nothing without failing", () => {
    const found = searchFoods(loadFoods(), "lentils", 3);
    expect(found).toHaveLength(3);
    expect(found[0].score).toBeGreaterThanOrEqual(found[2].score);
    expect(searchFoods(loadFoods(), "xylophone")).toEqual([]);
    expect(() => searchFoods(loadFoods(), "  ")).toThrow("must hold a word");
    expect(() => searchFoods(loadFoods(), "egg", 0)).toThrow("limit");
  });

  it("gives any food to a formula", () => {
    const parsnip = ingredientFromFood({ food: searchFoods(loadFoods(), "parsnips raw")[0].food, id: "my-parsnip" });
    const formula = parseFormula(
      JSON.stringify({
        id: "one-root",
        name: "one root",
        origin: "invented",
        foodClass: "plant",
        airFraction: 0,
        mix: [{ ingredient: "my-parsnip", amount: "2 cups slices" }],
        coating: [],
        piecesPerServing: 1,
        note: "",
      }),
      "one-root.json",
    );
    expect(formulaTotals(formula, [parsnip]).mixG).toBeCloseTo(266, 9);
    expect(parsnip.source).toContain("food 11298");
  });
});

describe("parseSr28", () => {
  it("keeps blanks as not known and leading zeros as text", () => {
    const butter = loadFoods().find((food) => food.ndb === "01001")!;
    expect(butter.per100G.saturatedFatG).toBeGreaterThan(50);
    expect(loadFoods()).toHaveLength(8789);
    expect(loadFoods().filter((food) => food.per100G.sugarsG === null).length).toBeGreaterThan(1000);
  });

  it("names damage by file and row", () => {
    expect(() => parseSr28({ abbreviated: "~01001~^1", descriptions: "" })).toThrow(
      "ABBREV.txt row 1: expected 53 fields, got 2",
    );
    const description = `~01001~^${"~x~^".repeat(12)}1`;
    expect(() => parseSr28({ abbreviated: "", descriptions: description })).toThrow(
      "expected food 01001 in ABBREV.txt too",
    );
    const cells = ["~01001~", "~X~", "15.8x", ...Array.from({ length: 50 }, () => "")].join("^");
    expect(() => parseSr28({ abbreviated: cells, descriptions: description })).toThrow(
      'SR28 food 01001, water: expected a number, got "15.8x"',
    );
  });
});
