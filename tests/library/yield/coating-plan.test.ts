import { describe, expect, it } from "vitest";
import { formulaTotals } from "../../../kernel-lib/library/src/food/formula/formula-totals";
import { coatPiece } from "../../../kernel-lib/library/src/yield/coat-piece";
import { coatingPlan } from "../../../kernel-lib/library/src/yield/coating-plan";
import { demoFormula, INGREDIENTS } from "../food/kitchen-data";

const totals = formulaTotals(demoFormula("turkey-sage"), INGREDIENTS);

describe("coatingPlan", () => {
  it("puts out what stays on N pieces, with room for pickup, drain and leftover", () => {
    const plan = coatingPlan({ totals, pieces: 60, pieceG: 24, leftoverPercent: 20, washDrainPercent: 50 });
    const [predust, wash] = plan.layers;
    const coated = coatPiece({ layers: totals.formula.coating, pieceG: 24 });
    expect(predust.onPiecesG).toBeCloseTo(60 * coated.layers[0].layerG, 9);
    expect(predust.putOutG).toBeCloseTo((predust.onPiecesG + 2 * predust.onPiecesSeG) / 0.8, 9);
    expect(wash.putOutG).toBeCloseTo(((wash.onPiecesG + 2 * wash.onPiecesSeG) * 1.5) / 0.8, 9);
    expect(wash.drainedG).toBeCloseTo(wash.onPiecesG / 2, 9);
    expect(predust.drainedG).toBe(0);
    for (const layer of plan.layers) {
      expect(layer.leftG).toBeGreaterThan(layer.drainedG);
      expect(layer.lines.reduce((sum, line) => sum + line.massG, 0)).toBeCloseTo(layer.putOutG, 9);
    }
    expect(plan.cautions[0]).toContain("Throw away wash and crumbs");
  });

  it("warns when a thin poultry piece carries more than 30 % coating", () => {
    const thin = coatingPlan({ totals, pieces: 10, pieceG: 12, surfaceMm2: 5200 });
    expect(thin.cautions[0]).toMatch(/Coating is \d+ % of the coated piece.*9 CFR 381\.166/);
  });

  it("warns of poultry that the formula does not declare, and of nothing but poultry", () => {
    const cautionOf = (id: string): string => {
      const { foodClass: _, ...undeclared } = demoFormula(id);
      const plain = formulaTotals(undeclared, INGREDIENTS);
      return coatingPlan({ totals: plain, pieces: 10, pieceG: 12, surfaceMm2: 9000 }).cautions[0];
    };
    expect(cautionOf("turkey-sage")).toContain("9 CFR 381.166");
    expect(cautionOf("pollock-dill")).not.toContain("9 CFR 381.166");
  });

  it("puts out exactly what stays when pickup is sure and nothing is left", () => {
    const sure = {
      ...totals.formula,
      coating: totals.formula.coating.map((layer) => ({ ...layer, pickupSePercent: 0 })),
    };
    const plan = coatingPlan({
      totals: formulaTotals(sure, INGREDIENTS),
      pieces: 10,
      pieceG: 24,
      leftoverPercent: 0,
      washDrainPercent: 0,
    });
    for (const layer of plan.layers) expect(layer.leftG).toBeCloseTo(0, 9);
  });

  it("refuses an uncoated formula and half a piece", () => {
    const bare = formulaTotals(demoFormula("corn-puff"), INGREDIENTS);
    expect(() => coatingPlan({ totals: bare, pieces: 10, pieceG: 20 })).toThrow(
      "must be of a formula with coating layers",
    );
    expect(() => coatingPlan({ totals, pieces: 1.5, pieceG: 20 })).toThrow("pieces must be a whole number");
  });
});
