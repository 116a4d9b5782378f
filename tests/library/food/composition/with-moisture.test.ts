import { describe, expect, it } from "vitest";
import { proximateSumG } from "../../../../kernel-lib/library/src/food/composition/proximate-sum";
import { waterToAdd, withMoisture } from "../../../../kernel-lib/library/src/food/composition/with-moisture";
import { formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { ingredientOf } from "../../../../kernel-lib/library/src/food/ingredient/ingredient-of";
import { demoFormula, INGREDIENTS } from "../kitchen-data";

describe("withMoisture", () => {
  it("keeps the dry matter's make-up and the sum of the proximates", () => {
    const lentils = ingredientOf(INGREDIENTS, "lentils-cooked");
    const wetter = withMoisture(lentils, 74);
    expect(wetter.per100G.waterG).toBe(74);
    const before = lentils.per100G;
    expect(wetter.per100G.proteinG! / wetter.per100G.carbohydrateG!).toBeCloseTo(
      before.proteinG! / before.carbohydrateG!,
      12,
    );
    expect(proximateSumG(wetter.per100G)).toBeCloseTo(
      100 + ((proximateSumG(before)! - 100) * 26) / (100 - before.waterG!),
      9,
    );
    expect(wetter.source).toContain("water set to 74 %, table 69.64 %");
  });

  it("refuses a food whose water is not known", () => {
    const lentils = ingredientOf(INGREDIENTS, "lentils-cooked");
    const unknown = { ...lentils, per100G: { ...lentils.per100G, waterG: null } };
    expect(() => withMoisture(unknown, 70)).toThrow("must state its water");
    expect(() => withMoisture(lentils, 100)).toThrow("between 0 and 99.9");
  });
});

describe("waterToAdd", () => {
  it("brings the mix to the wanted moisture, either way", () => {
    const totals = formulaTotals(demoFormula("beet-lentil"), INGREDIENTS);
    for (const target of [55, 64, 72]) {
      const { waterG, mixG } = waterToAdd(totals, target);
      expect((totals.mixG * totals.composition.waterFraction + waterG) / mixG).toBeCloseTo(target / 100, 12);
    }
    expect(waterToAdd(totals, 55).waterG).toBeLessThan(0);
  });
});
