// Source: see macros/reference.json (USDA SR28 values; numpy draws by macros/make.py).
import { describe, expect, it } from "vitest";
import type { Formula, PickupBasis } from "../../kernel-lib/library/src/food/formula/formula";
import { formulaTotals } from "../../kernel-lib/library/src/food/formula/formula-totals";
import type { Ingredient } from "../../kernel-lib/library/src/food/ingredient/ingredient";
import { NUTRIENT_NAMES } from "../../kernel-lib/library/src/food/ingredient/nutrients";
import type { PieceMacrosOptions } from "../../kernel-lib/library/src/macros/macro-model";
import { pieceMacros } from "../../kernel-lib/library/src/macros/piece-macros";
import { pieceMacrosMonteCarlo } from "../../kernel-lib/library/src/macros/piece-macros-monte-carlo";
import { comparison } from "./comparison";
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
const numpy = (what: string) =>
  comparison({
    page: "yield-and-macros",
    what,
    against: "the chain written out and drawn in numpy",
    source: "USDA National Nutrient Database for Standard Reference, Release 28 (2015)",
  });
const values = numpy("nutrients of a piece and of 100 g by `pieceMacros`");
const spreads = numpy("standard errors of these by propagation");
const drawnSpreads = numpy("standard errors of these by drawing");
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
      if (value === 0) expect(found.value, name).toBe(0);
      else values.relative(found.value, value, 1e-9);
      if (sd === 0) expect(found.standardError, name).toBe(0);
      else spreads.relative(found.standardError, sd, 0.005 + 5 * noise);
    }
  });

  it.each(views)("draws the same means and standard deviations, %s", (view) => {
    const draws = 50_000;
    const drawn = pieceMacrosMonteCarlo({ ...options, draws, seed: 23 });
    for (const name of NUTRIENT_NAMES) {
      const { mean, sd } = reference.expected[view][name];
      const found = drawn[view][name];
      expect(Math.abs(found.value - mean), name).toBeLessThanOrEqual((5 * sd) / Math.sqrt(draws));
      drawnSpreads.relative(found.standardError, sd, 5 * (noise + 1 / Math.sqrt(draws)));
    }
  });
});
