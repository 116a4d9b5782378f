// Source: see macros/reference.json (USDA SR28 values; numpy draws by macros/make.py).
import { describe, expect, it } from "vitest";
import type { Formula, PickupBasis } from "../../kernel-lib/library/src/food/formula/formula";
import { formulaTotals } from "../../kernel-lib/library/src/food/formula/formula-totals";
import type { Ingredient } from "../../kernel-lib/library/src/food/ingredient/ingredient";
import { NUTRIENT_NAMES } from "../../kernel-lib/library/src/food/ingredient/nutrients";
import type { PieceMacrosOptions } from "../../kernel-lib/library/src/macros/macro-model";
import { pieceMacros } from "../../kernel-lib/library/src/macros/piece-macros";
import { pieceMacrosMonteCarlo } from "../../kernel-lib/library/src/macros/piece-macros-monte-carlo";
import reference from "./macros/reference.json";

const ingredients: Ingredient[] = Object.entries(reference.foods).map(([id, per100G]) => ({
  id,
  name: id,
  ndb: null,
  foodClass: null,
  per100G,
  householdWeights: id === "oil" ? [{ measure: "1 tbsp", massG: reference.oilTablespoonG, source: "SR28" }] : [],
  energyFactors: null,
  allergensUs: [],
  allergensEu: [],
  source: "SR28",
  costPerKg: null,
}));
const formula: Formula = {
  id: "reference",
  name: "reference",
  origin: "a reference calculation",
  foodClass: "poultry",
  airFraction: 0,
  mix: reference.mix.map(([ingredient, amount]) => ({ ingredient, amount })),
  coating: reference.layers.map((layer) => ({
    layer: "breading",
    lines: [{ ingredient: layer.food, amount: "100 g" }],
    pickupPercent: layer.percent,
    pickupBasis: layer.basis as PickupBasis,
    pickupSePercent: layer.se,
    atSurfaceCm2PerG: layer.atSurfaceCm2PerG,
  })),
  piecesPerServing: 1,
  note: "",
};
const stage = ({ y, u, fat, fat_u }: typeof reference.cook): PieceMacrosOptions["cook"] => ({
  yieldPercent: 100 * y,
  yieldSePercent: 100 * u,
  fatRetentionPercent: 100 * fat,
  fatRetentionSePercent: 100 * fat_u,
});
const options: PieceMacrosOptions = {
  totals: formulaTotals(formula, ingredients),
  pieceG: reference.piece.massG,
  pieceSeG: reference.piece.seG,
  surfaceMm2: reference.piece.surfaceMm2,
  cook: stage(reference.cook),
  reheat: stage(reference.reheat),
};
const views = ["perPiece", "per100GRaw", "per100GFrozen", "per100GEaten"] as const;
const noise = 1 / Math.sqrt(2 * reference.draws);

describe("macros of a piece against numpy", () => {
  const law = pieceMacros(options);

  it("gives the same masses", () => {
    expect(law.coatedG.value).toBeCloseTo(reference.coatedG, 9);
    expect(law.eatenG.value).toBeCloseTo(reference.eatenG, 9);
  });

  it.each(views)("gives the same values and standard errors, %s", (view) => {
    for (const name of NUTRIENT_NAMES) {
      const { value, sd } = reference.expected[view][name];
      const found = law[view][name];
      expect(Math.abs(found.value - value), name).toBeLessThanOrEqual(1e-9 * Math.abs(value));
      expect(Math.abs(found.standardError - sd), name).toBeLessThanOrEqual((0.005 + 5 * noise) * sd);
    }
  });

  it.each(views)("draws the same means and standard deviations, %s", (view) => {
    const draws = 50_000;
    const drawn = pieceMacrosMonteCarlo({ ...options, draws, seed: 23 });
    for (const name of NUTRIENT_NAMES) {
      const { mean, sd } = reference.expected[view][name];
      const found = drawn[view][name];
      expect(Math.abs(found.value - mean), name).toBeLessThanOrEqual((5 * sd) / Math.sqrt(draws));
      expect(Math.abs(found.standardError / sd - 1), name).toBeLessThanOrEqual(5 * (noise + 1 / Math.sqrt(draws)));
    }
  });
});
