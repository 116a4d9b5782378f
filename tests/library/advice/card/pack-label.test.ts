import { packLabel } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { describe, expect, test } from "vitest";
import { ingredientsNeeded } from "../../../../kernel-lib/library/src/advice/cost/ingredients-needed";

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
