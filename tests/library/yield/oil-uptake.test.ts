import { describe, expect, it } from "vitest";
import { formulaTotals } from "../../../kernel-lib/library/src/food/formula/formula-totals";
import { pieceMacros } from "../../../kernel-lib/library/src/macros/piece-macros";
import { oilUptake } from "../../../kernel-lib/library/src/yield/oil-uptake";
import { demoFormula, INGREDIENTS } from "../food/kitchen-data";

describe("oilUptake", () => {
  it("balances mass: before + oil − lost = after", () => {
    const uptake = oilUptake({ massBeforeG: 120, massAfterG: 108, fatBeforePercent: 5, fatAfterPercent: 11 });
    expect(uptake.oilG).toBeCloseTo(5.88, 10);
    expect(120 + uptake.oilG - uptake.lostG).toBeCloseTo(108, 10);
    expect(uptake.pickupPercent).toBeCloseTo(4.9, 10);
  });

  it("gives macros the fat that the analysis found, as a layer with its yield", () => {
    const formula = demoFormula("corn-puff");
    const bare = formulaTotals(formula, INGREDIENTS);
    const fatBeforePercent = bare.mix.per100G.fatG!;
    const uptake = oilUptake({ massBeforeG: 20, massAfterG: 18.5, fatBeforePercent, fatAfterPercent: 15 });
    const fried = formulaTotals(
      {
        ...formula,
        coating: [
          {
            layer: "fryer oil",
            lines: [{ ingredient: "oil-canola", amount: "100 g" }],
            pickupPercent: uptake.pickupPercent,
            pickupBasis: "substrate",
            pickupSePercent: 0,
          },
        ],
      },
      INGREDIENTS,
    );
    const macros = pieceMacros({
      totals: fried,
      pieceG: 20,
      cook: { yieldPercent: uptake.yieldPercent, yieldSePercent: 0 },
    });
    expect(macros.eatenG.value).toBeCloseTo(18.5, 9);
    expect(macros.per100GEaten.fatG.value).toBeCloseTo(15, 9);
  });

  it("refuses lost fat and mass from nowhere", () => {
    const base = { massBeforeG: 100, massAfterG: 80, fatBeforePercent: 20, fatAfterPercent: 20 };
    expect(() => oilUptake(base)).toThrow("must be at least the 20.0 g before: fat was lost");
    expect(() => oilUptake({ ...base, massAfterG: 130 })).toThrow("must be at most the 106.0 g of piece and oil");
  });
});
