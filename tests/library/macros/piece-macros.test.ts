import { describe, expect, it } from "vitest";
import { formulaTotals } from "../../../kernel-lib/library/src/food/formula/formula-totals";
import { NUTRIENT_NAMES } from "../../../kernel-lib/library/src/food/ingredient/nutrients";
import type { PieceMacrosOptions } from "../../../kernel-lib/library/src/macros/macro-model";
import { pieceMacros } from "../../../kernel-lib/library/src/macros/piece-macros";
import { pieceMacrosMonteCarlo } from "../../../kernel-lib/library/src/macros/piece-macros-monte-carlo";
import { coatPiece } from "../../../kernel-lib/library/src/yield/coat-piece";
import { DEMO_FORMULAS, demoFormula, INGREDIENTS } from "../food/kitchen-data";

const optionsFor = (id: string): PieceMacrosOptions => ({
  totals: formulaTotals(demoFormula(id), INGREDIENTS),
  pieceG: 22,
  pieceSeG: 1,
  surfaceMm2: 5600,
  cook: { yieldPercent: 92, yieldSePercent: 1.2, fatRetentionPercent: 96, fatRetentionSePercent: 2 },
  reheat: { yieldPercent: 86, yieldSePercent: 1.5 },
});

describe("pieceMacros", () => {
  it("is the mix's own value for a bare piece that loses nothing", () => {
    const totals = formulaTotals(demoFormula("corn-puff"), INGREDIENTS);
    const macros = pieceMacros({ totals, pieceG: 25 });
    for (const name of NUTRIENT_NAMES) {
      expect(macros.perPiece[name].value).toBeCloseTo(totals.mix.per100G[name]! / 4, 9);
      expect(macros.per100GEaten[name].value).toBeCloseTo(totals.mix.per100G[name]!, 9);
    }
    expect(macros.perServing.energyKcal.value).toBeCloseTo(5 * macros.perPiece.energyKcal.value, 9);
    expect(macros.notices).toContain("no cook or reheat loss is counted: as eaten equals as coated");
  });

  it("adds what coating brings, layer by layer", () => {
    const options = optionsFor("turkey-sage");
    const macros = pieceMacros({ totals: options.totals, pieceG: 22, surfaceMm2: 5600 });
    const coated = coatPiece({ layers: options.totals.formula.coating, pieceG: 22, surfaceMm2: 5600 });
    const byHand = coated.layers.reduce(
      (sum, layer, at) => sum + (layer.layerG * options.totals.layers[at].blend.per100G.proteinG!) / 100,
      (22 * options.totals.mix.per100G.proteinG!) / 100,
    );
    expect(macros.perPiece.proteinG.value).toBeCloseTo(byHand, 9);
    expect(macros.coatedG.value).toBeCloseTo(coated.coatedG, 9);
    expect(macros.eatenG.value).toBeCloseTo(coated.coatedG, 9);
  });

  it.each(DEMO_FORMULAS)("keeps %s in balance: what leaves is water and dripped fat", (id) => {
    const options = optionsFor(id);
    const before = pieceMacros({ ...options, cook: undefined, reheat: undefined });
    const after = pieceMacros(options);
    const lostG = before.eatenG.value - after.eatenG.value;
    const waterLostG = before.perPiece.waterG.value - after.perPiece.waterG.value;
    const fatLostG = before.perPiece.fatG.value - after.perPiece.fatG.value;
    expect(waterLostG + fatLostG).toBeCloseTo(lostG, 9);
    expect(fatLostG).toBeCloseTo(0.04 * before.perPiece.fatG.value, 9);
    expect(before.perPiece.energyKcal.value - after.perPiece.energyKcal.value).toBeCloseTo(9 * fatLostG, 9);
    expect(after.perPiece.proteinG.value).toBeCloseTo(before.perPiece.proteinG.value, 12);
    expect(after.per100GEaten.proteinG.value).toBeGreaterThan(after.per100GFrozen.proteinG.value);
    expect(after.per100GFrozen.proteinG.value).toBeGreaterThan(after.per100GRaw.proteinG.value);
  });

  it.each(DEMO_FORMULAS)("agrees with Monte Carlo for %s within the noise of its draws", (id) => {
    const options = optionsFor(id);
    const law = pieceMacros(options);
    const draws = 40_000;
    const drawn = pieceMacrosMonteCarlo({ ...options, draws, seed: 11 });
    for (const view of ["perPiece", "per100GRaw", "per100GFrozen", "per100GEaten"] as const) {
      for (const name of NUTRIENT_NAMES) {
        const { value, standardError } = law[view][name];
        const other = drawn[view][name];
        if (standardError === 0) {
          expect(other.standardError).toBe(0);
          continue;
        }
        // 1 % of slack for curvature; five standard errors of a mean and of a spread from so many draws
        expect(Math.abs(other.value - value)).toBeLessThan(
          5 * (standardError / Math.sqrt(draws)) + 0.01 * standardError + 0.001 * Math.abs(value),
        );
        expect(Math.abs(other.standardError / standardError - 1)).toBeLessThan(0.02 + 5 / Math.sqrt(2 * draws));
      }
    }
  });

  it("says what is not known and prints it as at least", () => {
    const macros = pieceMacros(optionsFor("pollock-dill"));
    expect(macros.perPiece.sugarsG.atLeast).toBe(true);
    expect(macros.perPiece.proteinG.atLeast).toBe(false);
    expect(macros.missing.sugarsG).toEqual(["fresh dill", "white pepper, ground"]);
    expect(macros.notices.join("\n")).toContain("sugarsG is at least what is shown: not known for fresh dill");
  });

  it("names where the doubt comes from, largest first", () => {
    const macros = pieceMacros({ ...optionsFor("beet-lentil"), pieceSeG: 4 });
    expect(macros.energyDoubt[0].source).toBe("mass of the piece");
    expect(macros.energyDoubt.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 9);
  });

  it("doubts cups more than the scale", () => {
    const options = { ...optionsFor("beet-lentil"), doubt: { compositionPercent: 0 } };
    const cups = pieceMacros(options).per100GRaw.sodiumMg.standardError;
    const scale = pieceMacros({ ...options, doubt: { compositionPercent: 0, householdPercent: 0.5 } }).per100GRaw
      .sodiumMg;
    expect(cups).toBeGreaterThan(4 * scale.standardError);
  });

  it("counts energy on the basis asked for", () => {
    const options = optionsFor("chickpea-carrot");
    const published = pieceMacros(options).perPiece.energyKcal.value;
    const general = pieceMacros({ ...options, energyBasis: "general 4-9-4" });
    const { proteinG, fatG, carbohydrateG } = pieceMacros({ ...options, cook: undefined, reheat: undefined }).perPiece;
    const dripped = 9 * 0.04 * fatG.value;
    expect(general.perPiece.energyKcal.value).toBeCloseTo(
      4 * proteinG.value + 9 * fatG.value + 4 * carbohydrateG.value - dripped,
      8,
    );
    expect(pieceMacros({ ...options, energyBasis: "EU Annex XIV" }).perPiece.energyKcal.value).toBeLessThan(
      general.perPiece.energyKcal.value,
    );
    const own = pieceMacros({ ...options, energyBasis: "food factors" });
    expect(Math.abs(own.perPiece.energyKcal.value / published - 1)).toBeLessThan(0.02);
    expect(own.notices.some((notice) => notice.includes("has no factors of its own"))).toBe(true);
  });

  it("refuses a loss that the piece's water cannot cover", () => {
    const options = optionsFor("corn-puff");
    expect(() => pieceMacros({ ...options, reheat: { yieldPercent: 30, yieldSePercent: 1 } })).toThrow(
      "must lose no more water than the piece holds",
    );
    expect(() => pieceMacros({ ...options, reheat: { yieldPercent: 130, yieldSePercent: 1 } })).toThrow(
      "reheat.yieldPercent",
    );
    expect(() => pieceMacrosMonteCarlo({ ...options, draws: 5 })).toThrow("draws");
  });

  it("tells what each ingredient's table value adds to a nutrient's doubt, by hand", () => {
    const { totals } = optionsFor("corn-puff");
    const macros = pieceMacros({ totals, pieceG: 25, doubt: { compositionPercent: 8 } });
    const mixG = totals.lines.reduce((sum, line) => sum + line.massG, 0);
    for (const name of NUTRIENT_NAMES) {
      const byHand: Record<string, number> = {};
      for (const { ingredient, massG } of totals.lines) {
        // 25 g of mix hold 25/100 of what 100 g hold, and a line's value is off by 8 %
        const part = (0.25 * 0.08 * massG * (ingredient.per100G[name] ?? 0)) / mixG;
        byHand[ingredient.id] = (byHand[ingredient.id] ?? 0) + part;
      }
      for (const [id, part] of Object.entries(byHand)) expect(macros.tableDoubt[name]![id]).toBeCloseTo(part, 9);
    }
  });

  it("names the yield of the stage that has a doubt, and no other", () => {
    const { totals } = optionsFor("corn-puff");
    const sources = (options: Partial<PieceMacrosOptions>): string[] =>
      pieceMacros({ totals, pieceG: 25, ...options }).energyDoubt.map(({ source }) => source);
    const stage = { yieldPercent: 90, yieldSePercent: 1 };
    expect(sources({ cook: stage })).toContain("cook yield");
    expect(sources({ cook: stage })).not.toContain("reheat yield");
    expect(sources({ reheat: stage })).toContain("reheat yield");
    expect(sources({ reheat: stage })).not.toContain("cook yield");
  });

  it("names an ingredient once though it stands in two lines, and no factors of its own only where they are asked for", () => {
    const { totals } = optionsFor("pollock-dill");
    const twice = { ...totals, lines: [...totals.lines, ...totals.lines] };
    expect(pieceMacros({ totals: twice, pieceG: 22 }).missing.sugarsG).toEqual(
      pieceMacros({ totals, pieceG: 22 }).missing.sugarsG,
    );
    for (const energyBasis of ["published", "general 4-9-4", "EU Annex XIV"] as const) {
      const { notices } = pieceMacros({ ...optionsFor("chickpea-carrot"), energyBasis });
      expect(notices.filter((notice) => notice.includes("factors of its own"))).toEqual([]);
    }
  });
});

describe("pieceMacrosMonteCarlo", () => {
  it("draws in mirrored pairs, so that what is linear in its inputs has its own value as mean", () => {
    const { bareG, energyDoubt, tableDoubt } = pieceMacrosMonteCarlo({ ...optionsFor("corn-puff"), draws: 1000 });
    expect(bareG.value).toBeCloseTo(22, 9);
    expect(bareG.standardError).toBeGreaterThan(0.9);
    expect(energyDoubt).toEqual([]);
    expect(tableDoubt).toEqual({});
  });
});
