import { describe, expect, it } from "vitest";
import { formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { scaleFormula } from "../../../../kernel-lib/library/src/food/formula/scale-formula";
import { scaledMeasure } from "../../../../kernel-lib/library/src/food/formula/scaled-measure";
import { panPreset } from "../../../../kernel-lib/library/src/pan/pan-preset";
import { slabMassG } from "../../../../kernel-lib/library/src/pan/slab-mass";
import { slabThickness } from "../../../../kernel-lib/library/src/pan/slab-thickness";
import { demoFormula, INGREDIENTS } from "../kitchen-data";

const totals = formulaTotals(demoFormula("turkey-sage"), INGREDIENTS);

describe("scaleFormula", () => {
  it("scales to a mass, keeping every proportion and the grams beside the measure", () => {
    const half = scaleFormula(totals, { mixG: totals.mixG / 2 });
    expect(half.factor).toBeCloseTo(0.5, 12);
    expect(half.lines.reduce((sum, line) => sum + line.massG, 0)).toBeCloseTo(totals.mixG / 2, 9);
    const sage = half.lines.find((line) => line.ingredientId === "sage")!;
    expect(sage).toMatchObject({ massG: expect.closeTo(0.7, 10), measure: "1 tsp" });
    expect(sage.how).toContain("USDA SR28");
    expect(half.lines[0].measure).toBeNull();
  });

  it("scales to a thickness that the slab then has", () => {
    const pan = panPreset("quarter sheet");
    const mixG = slabMassG({ pan, thicknessMm: 9, densityKgM3: 1040 });
    const scaled = scaleFormula(totals, { mixG });
    expect(slabThickness({ pan, batchG: scaled.mixG, densityKgM3: 1040 }).thicknessMm).toBeCloseTo(9, 6);
  });

  it("scales to a count of pieces, with what the cut leaves behind", () => {
    expect(scaleFormula(totals, { pieces: 60, pieceG: 20, cutYieldFraction: 0.96 }).mixG).toBeCloseTo(1250, 9);
    expect(() => scaleFormula(totals, { pieces: 2.5, pieceG: 20 })).toThrow("pieces must be a whole number");
    expect(() => scaleFormula(totals, { mixG: 0 })).toThrow("mixG must be > 0 g");
  });
});

describe("scaledMeasure", () => {
  it.each([
    ["1 1/2 tsp", 2, "3 tsp"],
    ["1/2 cup chopped", 0.5, "1/4 cup chopped"],
    ["1 large", 1.5, "1 1/2 large"],
    ["2 tbsp", 1.3, "2 5/8 tbsp"],
    ["4 cups", 3.1, "12 1/2 cups"],
    ["1/2 tsp", 0.05, "under 1/8 tsp"],
  ])("%s times %d is %s", (amount, factor, text) => {
    expect(scaledMeasure(amount, factor)).toBe(text);
  });
});
