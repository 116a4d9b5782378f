import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cardNumber, cardTexts } from "../../../../kernel-lib/library/src/advice/card/card-texts";
import { formulaAllergens } from "../../../../kernel-lib/library/src/food/formula/formula-allergens";
import { formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { EU_ALLERGENS, US_ALLERGENS } from "../../../../kernel-lib/library/src/food/ingredient/allergens";
import { labelEu, labelUs } from "../../../../kernel-lib/library/src/macros/label-values";
import { pieceMacros } from "../../../../kernel-lib/library/src/macros/piece-macros";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { storageLife } from "../../../../kernel-lib/library/src/safety/cold/storage-life";
import { coreLimit } from "../../../../kernel-lib/library/src/safety/core-limit";
import { CARD_LANGUAGES } from "../../../../kernel-lib/library/src/trials/card-language";

const kitchen = loadKitchen();
const [variant] = kitchen.variants;
const totals = formulaTotals(variant.formula, kitchen.ingredients);
const CLASSES = ["poultry", "groundMeat", "fish", "egg", "wholeMeat", "plant", "readyToEat", undefined] as const;
const STATES = ["raw", "par-cooked", "cooked and cooled", undefined] as const;
const UNITS = ["us", "metric"] as const;
const numbersIn = (text: string): string[] =>
  (text.match(/\d+(?:[.,]\d+)?/g) ?? []).map((one) => one.replace(",", ".")).sort();

describe("cardTexts", () => {
  it("say the same limits, times and rules in every language, for every class, state and unit", () => {
    const [english, ...others] = CARD_LANGUAGES.map(cardTexts);
    for (const foodClass of CLASSES)
      for (const state of STATES)
        for (const units of UNITS) {
          const limit = coreLimit(foodClass, state);
          for (const other of others)
            for (const name of ["caution", "state"] as const)
              expect(numbersIn(other[name](limit, units)), `${name} ${foodClass} ${state}`).toEqual(
                numbersIn(english[name](limit, units)),
              );
        }
  });

  it("carry every amount that they are given, in every language", () => {
    const amount = fc.integer({ min: 1, max: 9999 }).map((whole) => `${whole}.5`);
    fc.assert(
      fc.property(fc.constantFrom(...CARD_LANGUAGES), fc.tuple(amount, amount, amount), (language, [a, b, c]) => {
        const texts = cardTexts(language);
        const said: readonly (readonly [string, readonly string[]])[] = [
          [texts.preheat(a, b), [a, b]],
          [texts.turn(a), [a]],
          [texts.takeOut(a, null), [a]],
          [texts.takeOut(a, b), [a, b]],
          [
            texts.takeOutIn([
              ["one", a],
              ["two", b],
            ]),
            ["one", a, "two", b],
          ],
          [texts.slab(a, { mass: b, pan: c }), [a, b, c]],
          [texts.serving(4, a), ["4", a]],
          [texts.bestBefore(a, b), [a, b]],
          [texts.bestWithin(91, a), ["91", a]],
          [texts.nutritionOf(a), [a]],
        ];
        for (const [text, parts] of said) for (const part of parts) expect(text).toContain(part);
      }),
    );
  });

  it("name every allergen and every line of both labels", () => {
    const macros = pieceMacros({ totals, pieceG: 16 });
    for (const texts of CARD_LANGUAGES.map(cardTexts)) {
      for (const allergen of [...US_ALLERGENS, ...EU_ALLERGENS]) expect(texts.allergen[allergen]).toMatch(/\p{L}/u);
      for (const { name } of [...labelUs(macros).lines, ...labelEu(macros, "frozen").lines])
        expect(texts.nutrient[name], name).toMatch(/\p{L}/u);
    }
  });

  it("in English repeat the cautions of the rooms that they come from", () => {
    const texts = cardTexts("en");
    expect(texts.allergenCautions).toEqual(formulaAllergens(totals).cautions);
    expect(texts.storageCaution).toBe(storageLife({ steps: [], food: "breaded fish" }).caution);
  });
});

describe("cardNumber", () => {
  it("writes a decimal comma in Spanish of a metric kitchen, and nowhere else", () => {
    expect(cardNumber("9.5 mm (3/8 in)", "es", "metric")).toBe("9,5 mm (3/8 in)");
    expect(cardNumber(12.5, "es", "us")).toBe("12.5");
    expect(cardNumber(12.5, "en", "metric")).toBe("12.5");
  });
});
