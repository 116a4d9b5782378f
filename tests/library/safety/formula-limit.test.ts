import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FoodClass, FoodState, Formula } from "../../../kernel-lib/library/src/food/formula/formula";
import {
  INGREDIENT_CLASSES,
  type Ingredient,
  type IngredientClass,
  RAW_CLASSES,
} from "../../../kernel-lib/library/src/food/ingredient/ingredient";
import { coreLimit } from "../../../kernel-lib/library/src/safety/core-limit";
import { formulaLimit } from "../../../kernel-lib/library/src/safety/formula-limit";
import { DEMO_FORMULAS, demoFormula, INGREDIENTS } from "../food/kitchen-data";

const washed = (formula: Formula, ingredient: string): Formula => ({
  ...formula,
  coating: [
    {
      layer: "wash",
      lines: [{ ingredient, amount: "100 g" }],
      pickupPercent: 8,
      pickupBasis: "substrate",
      pickupSePercent: 1,
    },
    ...formula.coating,
  ],
});
const undeclared = (id: string): Formula => {
  const { foodClass: _, state: __, ...rest } = demoFormula(id);
  return rest;
};
/** One invented ingredient of each class, and one that states none. */
const shelf: readonly Ingredient[] = [...INGREDIENT_CLASSES, null].map((foodClass) => ({
  ...INGREDIENTS[0],
  id: foodClass === null ? "unknown" : `some-${foodClass.toLowerCase()}`,
  name: foodClass === null ? "a bought paste" : foodClass,
  foodClass,
}));
const of = (...classes: (IngredientClass | null)[]): Formula => ({
  id: "any",
  name: "any",
  origin: "invented",
  airFraction: 0,
  mix: classes.map((one) => ({
    ingredient: one === null ? "unknown" : `some-${one.toLowerCase()}`,
    amount: "100 g",
  })),
  coating: [],
  piecesPerServing: 1,
  note: "",
});

describe("formulaLimit", () => {
  it("refuses a turkey formula declared fish, naming ingredient and class", () => {
    const declared: Formula = { ...demoFormula("turkey-sage"), foodClass: "fish" };
    expect(() => formulaLimit(declared, INGREDIENTS, "formulas/turkey-sage.json")).toThrow(
      'formulas/turkey-sage.json: foodClass must be poultry or as strict since turkey-ground-93 is raw poultry, got "fish"',
    );
  });

  it("asks for egg's limit when a plant formula has egg in its wash; declared plant it keeps 74 °C, and is raw", () => {
    const formula = undeclared("beet-lentil");
    expect(formulaLimit(formula, INGREDIENTS)).toMatchObject({ foodClass: "plant", state: null, raw: false });
    const limit = formulaLimit(washed(formula, "egg-whole"), INGREDIENTS);
    expect(limit).toMatchObject({
      foodClass: "egg",
      state: "raw",
      raw: true,
      limitC: coreLimit("egg").limitC,
      limitF: 160,
      from: ["whole egg, raw"],
    });
    const bound = formulaLimit({ ...washed(formula, "egg-whole"), foodClass: "plant" }, INGREDIENTS);
    expect(bound).toMatchObject({ foodClass: "plant", limitC: 74, limitF: 165, raw: true, from: ["whole egg, raw"] });
    expect(bound.caution).toContain("Raw inside until its core has reached the limit");
    expect(formulaLimit(washed(formula, "egg-white-dried"), INGREDIENTS)).toMatchObject({
      foodClass: "readyToEat",
      raw: false,
      limitF: 165,
    });
  });

  it("finds egg stricter than fish: raw white in a pollock slab asks for egg's limit, and the word fish is no lie", () => {
    const limit = formulaLimit(washed(demoFormula("pollock-dill"), "egg-white"), INGREDIENTS);
    expect(limit).toMatchObject({ foodClass: "egg", limitC: coreLimit("egg").limitC, raw: true });
  });

  it("lets a stricter class stand", () => {
    const stricter: Formula = { ...demoFormula("pollock-dill"), foodClass: "poultry" };
    expect(formulaLimit(stricter, INGREDIENTS)).toMatchObject({
      foodClass: "poultry",
      limitF: 165,
      raw: true,
      from: [],
    });
  });

  it("has 165 °F for whatever was cooked and cooled, and takes readyToEat for it then only", () => {
    const cooled: Formula = { ...undeclared("pollock-dill"), state: "cooked and cooled" };
    expect(formulaLimit(cooled, INGREDIENTS)).toMatchObject({ foodClass: "fish", limitF: 165, holdS: 0, raw: false });
    expect(formulaLimit({ ...cooled, foodClass: "readyToEat" }, INGREDIENTS).limitF).toBe(165);
    expect(() => formulaLimit({ ...cooled, state: "par-cooked", foodClass: "readyToEat" }, INGREDIENTS)).toThrow(
      /must be fish or as strict, unless state is "cooked and cooled", since pollock-alaska is raw fish, got "readyToEat"/,
    );
  });

  it("takes the word of a declared class for an ingredient that states none, and says so", () => {
    const taken = formulaLimit({ ...of("fish", null), foodClass: "fish" }, shelf);
    expect(taken).toMatchObject({ foodClass: "fish", limitF: 155 });
    expect(taken.caution).toContain("No class is stated for a bought paste: the formula's word, fish, is taken.");
    const strictest = formulaLimit(of("fish", null), shelf);
    expect(strictest).toMatchObject({ foodClass: null, limitF: 165, raw: true });
    expect(strictest.caution).toContain("No class is stated for a bought paste: the strictest limit stands.");
    expect(strictest.caution).toContain("labelled as raw");
    expect(formulaLimit({ ...of(null), foodClass: "poultry" }, shelf).caution).not.toContain("No class");
  });

  it("names an ingredient that the kitchen has not", () => {
    expect(() => formulaLimit(undeclared("turkey-sage"), shelf, "formulas/t.json")).toThrow(
      /formulas\/t\.json: ingredient must be one of the kitchen's ingredients .*got "turkey-ground-93"/,
    );
  });

  it("gives each demo formula the class that it declares", () => {
    const found = Object.fromEntries(
      DEMO_FORMULAS.map((id) => {
        const { foodClass, limitF, raw } = formulaLimit(demoFormula(id), INGREDIENTS);
        return [id, [foodClass, limitF, raw]];
      }),
    );
    expect(found).toEqual({
      "beet-lentil": ["plant", 165, false],
      "turkey-sage": ["poultry", 165, true],
      "pollock-dill": ["fish", 155, true],
      "chickpea-carrot": ["plant", 165, false],
      "corn-puff": ["egg", 165, false],
    });
  });

  it("is never below the limit of any raw ingredient, and calls raw what is", () => {
    const classes: FoodClass[] = [...RAW_CLASSES, "plant", "readyToEat"];
    const states: FoodState[] = ["raw", "par-cooked", "cooked and cooled"];
    let given = 0;
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...INGREDIENT_CLASSES, null), { minLength: 1, maxLength: 5 }),
        fc.array(fc.constantFrom(...INGREDIENT_CLASSES, null), { maxLength: 2 }),
        fc.option(fc.constantFrom(...classes), { nil: undefined }),
        fc.option(fc.constantFrom(...states), { nil: undefined }),
        (mix, coats, foodClass, state) => {
          const formula = coats.reduce<Formula>((so, one) => washed(so, of(one).mix[0].ingredient), {
            ...of(...mix),
            foodClass,
            state,
          });
          const raw = RAW_CLASSES.filter((one) => mix.includes(one) || coats.includes(one));
          const asked = Math.max(0, ...raw.map((one) => coreLimit(one).limitC));
          let limit: ReturnType<typeof formulaLimit>;
          try {
            limit = formulaLimit(formula, shelf);
          } catch (error) {
            // refused: only ever a declared class over something raw, milder or without anything raw in it
            expect((error as Error).message).toMatch(/foodClass must be/);
            expect(raw.length).toBeGreaterThan(0);
            const declared = coreLimit(foodClass as FoodClass);
            expect(!declared.raw || declared.limitC < asked).toBe(true);
            return;
          }
          given++;
          expect(limit.limitC).toBeGreaterThanOrEqual(asked);
          if (foodClass !== undefined) expect(limit.limitC).toBeGreaterThanOrEqual(coreLimit(foodClass).limitC);
          if (state === "cooked and cooled") expect(limit).toMatchObject({ limitC: 74, limitF: 165, raw: false });
          else if (raw.length > 0) expect(limit.raw).toBe(true);
        },
      ),
      { numRuns: 3000 },
    );
    expect(given).toBeGreaterThan(500);
  });
});
