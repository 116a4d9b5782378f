import { describe, expect, it } from "vitest";
import { COMPOSITION_FIELDS } from "../../../../kernel-lib/library/src/food/composition/composition";
import { formulaComposition, formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { parseFormula } from "../../../../kernel-lib/library/src/food/formula/read/parse-formula";
import { DEMO_FORMULAS, demoFormula, INGREDIENTS } from "../kitchen-data";

describe("formulaTotals", () => {
  it.each(DEMO_FORMULAS)("weighs %s for a half sheet of 6 to 13 mm", (id) => {
    const totals = formulaTotals(demoFormula(id), INGREDIENTS);
    const litres = totals.mixG / 1050;
    const thicknessMm = (litres * 1e6) / (419 * 292);
    expect(thicknessMm).toBeGreaterThan(6);
    expect(thicknessMm).toBeLessThan(13);
    expect(totals.lines.reduce((sum, line) => sum + line.massG, 0)).toBeCloseTo(totals.mixG, 8);
    expect(demoFormula(id).origin).toContain("invented");
  });

  it.each(DEMO_FORMULAS)("gives %s a composition that sums to 1 and agrees with its proximates within 1 %%", (id) => {
    const totals = formulaTotals(demoFormula(id), INGREDIENTS);
    const composition = formulaComposition(demoFormula(id), INGREDIENTS);
    expect(COMPOSITION_FIELDS.reduce((sum, field) => sum + composition[field], 0)).toBeCloseTo(1, 10);
    expect(Math.abs(composition.waterFraction - totals.mix.per100G.waterG! / 100)).toBeLessThan(0.01);
    expect(Math.abs(composition.fatFraction - totals.mix.per100G.fatG! / 100)).toBeLessThan(0.01);
  });

  it("adds up energy as the hand sum of its lines", () => {
    const { lines, mix } = formulaTotals(demoFormula("beet-lentil"), INGREDIENTS);
    const byHand = lines.reduce((sum, line) => sum + (line.massG * line.ingredient.per100G.energyKcal!) / 100, 0);
    expect(mix.totals.energyKcal).toBeCloseTo(byHand, 9);
  });

  it("carries what is not known by name", () => {
    const { mix } = formulaTotals(demoFormula("pollock-dill"), INGREDIENTS);
    expect(mix.missing.sugarsG).toEqual(["fresh dill", "white pepper, ground"]);
    expect(mix.missing.proteinG).toBeUndefined();
  });

  it("prices a mix only when every ingredient has a price", () => {
    const formula = demoFormula("beet-lentil");
    expect(formulaTotals(formula, INGREDIENTS).costPerKg).toBeNull();
    const priced = INGREDIENTS.map((one) => ({ ...one, costPerKg: one.id === "beets-cooked" ? 3 : 1 }));
    const beets = 460 / formulaTotals(formula, priced).mixG;
    expect(formulaTotals(formula, priced).costPerKg).toBeCloseTo(1 + 2 * beets, 10);
  });
});

describe("parseFormula", () => {
  const good = JSON.stringify(demoFormula("turkey-sage"));
  const damaged = (change: (formula: Record<string, unknown>) => void): string => {
    const formula = JSON.parse(good);
    change(formula);
    return JSON.stringify(formula);
  };

  it.each([
    ["{", "mine.json line 1: expected JSON: a name in double quotes, got the end of the file"],
    [damaged((f) => delete f.mix), "mix"],
    [damaged((f) => (f.airFraction = 1.2)), "airFraction"],
    [damaged((f) => (f.foodClass = "bird")), "foodClass"],
    [damaged((f) => (f.state = "warm")), "state"],
    [damaged((f) => (f.piecesPerServing = 2.5)), "piecesPerServing"],
    [damaged((f) => (f.colour = "red")), "colour"],
    [
      damaged((f) => Object.assign((f.coating as object[])[0], { pickupBasis: "finished", pickupPercent: 120 })),
      "mine.json line 1, coating.0.pickupPercent: expected below 100 % of the finished weight, got 120",
    ],
  ])("refuses damage (%#)", (text, message) => {
    expect(() => parseFormula(text, "mine.json")).toThrow(message);
  });

  it("does without a class and a state", () => {
    const plain = parseFormula(
      damaged((f) => {
        delete f.foodClass;
        delete f.state;
      }),
      "mine.json",
    );
    expect(plain.foodClass).toBeUndefined();
    expect(plain.state).toBeUndefined();
  });
});
