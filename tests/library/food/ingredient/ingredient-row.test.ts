import { describe, expect, it } from "vitest";
import { INGREDIENT_COLUMNS } from "../../../../kernel-lib/library/src/food/ingredient/ingredient-columns";
import { ingredientRow } from "../../../../kernel-lib/library/src/food/ingredient/ingredient-row";
import { parseIngredients } from "../../../../kernel-lib/library/src/food/ingredient/parse-ingredients";
import { searchFoods } from "../../../../kernel-lib/library/src/food/ingredient/search-foods";
import { loadFoods } from "../../../../kernel-lib/library/src/notebook/load-foods";

const [{ food }] = searchFoods(loadFoods(), "parsnips raw");

describe("ingredientRow", () => {
  it("is a row that reads back as the food, in the table's own columns", () => {
    for (const headings of [
      INGREDIENT_COLUMNS,
      ["Source", "id", "Calories", "water_g", "protein (oz)", "fat", "sodium", "carbs", "colour"],
    ]) {
      const row = ingredientRow({ food, id: "parsnip", headings });
      const [back] = parseIngredients(`${headings.join(",")}\n${row}\n`, "i.csv");
      expect(back.id).toBe("parsnip");
      expect(back.source).toContain(`food ${food.ndb}`);
      expect(back.per100G.proteinG).toBeCloseTo(food.per100G.proteinG ?? 0, 4);
      expect(back.per100G.sodiumMg).toBe(food.per100G.sodiumMg);
      expect(back.foodClass).toBeNull();
    }
  });
});
