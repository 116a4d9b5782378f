import { packLabel } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { describe, expect, test } from "vitest";
import { ingredientsNeeded } from "../../../../kernel-lib/library/src/advice/cost/ingredients-needed";
import { formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { labelEu, labelUs } from "../../../../kernel-lib/library/src/macros/label-values";
import { pieceMacros } from "../../../../kernel-lib/library/src/macros/piece-macros";

const kitchen = loadKitchen();

describe("packLabel", () => {
  test("every variant: ingredients heaviest first, each once, none left out", () => {
    for (const { variantId } of kitchen.variants) {
      const label = packLabel({ kitchen, variantId });
      const { ingredients } = ingredientsNeeded(kitchen, { variantId });
      const massOf = new Map(ingredients.map((one) => [one.ingredient.name, one.mixG + one.coatingG - one.wasteG]));
      const masses = label.ingredients.map((name) => massOf.get(name) as number);
      expect(masses).toHaveLength(ingredients.length);
      expect(masses).toEqual([...masses].sort((a, b) => b - a));
    }
  });

  test("nutrition is of the piece as packed: what a label of the same macros prints, by each side's rule", () => {
    const { variant, batch } = ingredientsNeeded(kitchen, { variantId: "turkey-sage" });
    const totals = formulaTotals(variant.formula, kitchen.ingredients);
    const macros = pieceMacros({ totals, pieceG: batch.pieces.pieceG, surfaceMm2: batch.pieces.surfaceMm2 });
    const of = (units: "us" | "metric") =>
      packLabel({ kitchen: { ...kitchen, units }, variantId: "turkey-sage" }).nutrition;
    const printed = (lines: readonly { readonly name: string; readonly printed: string; readonly unit: string }[]) =>
      lines.map(({ name, printed, unit }) => (name === "calories" ? printed : `${printed} ${unit}`));
    expect(of("metric").lines.map(({ amount }) => amount)).toEqual(printed(labelEu(macros, "frozen").lines));
    expect(of("us").lines.map(({ amount }) => amount)).toEqual(printed(labelUs(macros).lines));
    expect(of("us").of).toMatch(/^in a serving of [\d.]+ oz, as packed$/);
  });

  test("raw stands first, in the kitchen's unit, and a par-cook is raw", () => {
    expect(packLabel({ kitchen, variantId: "turkey-sage" }).state).toMatch(/^Raw\. Cook until every core is at 74 °C/);
    const us = packLabel({ kitchen: { ...kitchen, units: "us" }, variantId: "pollock-dill" });
    expect(us.state).toMatch(/^Raw\. Cook until every core is at 155 °F/);
    expect(packLabel({ kitchen, variantId: "corn-puff" }).state).toMatch(/^Heat until every core is at 74 °C/);
  });

  test("dates go by the calendar, a loose pack is shorter, and no date is made up", () => {
    const of = (more: object) => packLabel({ kitchen, variantId: "pollock-dill", ...more });
    expect(of({ frozenOn: "2027-12-15" }).bestBefore).toBe("2028-03-15");
    expect(of({ frozenOn: "2026-03-14", packagingFactor: 0.5 }).bestBefore).toBe("2026-04-28");
    expect(of({})).toMatchObject({ bestBefore: null, frozenOn: null, lifeDays: 91 });
    for (const frozenOn of ["14.3.2026", "2026-02-30", "today"])
      expect(() => of({ frozenOn })).toThrow(/frozenOn must be a day, as 2026-03-14/);
    expect(of({}).cautions.join(" ")).toMatch(/Check the label.*quality, not safety/);
  });
});
