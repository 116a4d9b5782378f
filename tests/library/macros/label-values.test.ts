import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formulaTotals } from "../../../kernel-lib/library/src/food/formula/formula-totals";
import { labelEu, labelUs } from "../../../kernel-lib/library/src/macros/label-values";
import { pieceMacros } from "../../../kernel-lib/library/src/macros/piece-macros";
import { roundLabelEu } from "../../../kernel-lib/library/src/macros/round-label-eu";
import { roundLabelUs } from "../../../kernel-lib/library/src/macros/round-label-us";
import { demoFormula, INGREDIENTS } from "../food/kitchen-data";

const macros = pieceMacros({
  totals: formulaTotals(demoFormula("pollock-dill"), INGREDIENTS),
  pieceG: 24,
  pieceSeG: 1,
  reheat: { yieldPercent: 88, yieldSePercent: 1 },
});

describe("labelUs and labelEu", () => {
  it("rounds one serving by the US rule and shows how far it could move", () => {
    const label = labelUs(macros);
    const calories = label.lines[0];
    expect(calories.printed).toBe(roundLabelUs({ nutrient: "calories", amount: macros.perServing.energyKcal.value }));
    expect(Number(calories.printed95[0])).toBeLessThanOrEqual(Number(calories.printed));
    expect(Number(calories.printed95[1])).toBeGreaterThanOrEqual(Number(calories.printed));
    expect(label.of).toContain("4 pieces");
    expect(label.lines.find((line) => line.name === "total sugars")!.printed).toMatch(/^≥ /);
    expect(label.cautions.join(" ")).toContain("not a compliance document");
  });

  it("counts EU energy from the printed nutrients' own amounts, and salt as sodium × 2.5", () => {
    const lines = new Map(labelEu(macros).lines.map((line) => [`${line.name} ${line.unit}`, line]));
    const { proteinG, fatG, carbohydrateG, fibreG, sodiumMg } = macros.per100GEaten;
    const available = carbohydrateG.value - fibreG.value;
    expect(lines.get("energy kJ")!.amount).toBeCloseTo(
      17 * proteinG.value + 37 * fatG.value + 17 * available + 8 * fibreG.value,
      9,
    );
    expect(lines.get("carbohydrate g")!.amount).toBeCloseTo(available, 12);
    expect(lines.get("salt g")!.amount).toBeCloseTo((sodiumMg.value * 2.5) / 1000, 12);
    expect(labelEu(macros, "frozen").lines[7].amount).toBeLessThan(lines.get("protein g")!.amount);
  });
});

describe("labelEu", () => {
  it("says what it is of, frozen or as eaten, and refuses anything else", () => {
    expect(labelEu(macros).of).toBe("100 g as eaten");
    expect(labelEu(macros, "frozen").of).toBe("100 g frozen");
    expect(labelEu(macros).cautions.join(" ")).toMatch(/not a compliance document.* Salt is sodium × 2\.5/);
    expect(() => labelEu(macros, "raw" as "eaten")).toThrow('labelEu: as must be "frozen" or "eaten", got "raw"');
  });
});

describe("the range that a label could print", () => {
  it("goes 1.96 standard errors of the energy either way, in proportion to the printed energy", () => {
    const energy = macros.per100GEaten.energyKcal;
    const share = (1.959963985 * energy.standardError) / energy.value;
    expect(share).toBeGreaterThan(0.02);
    for (const line of labelEu(macros).lines.slice(0, 2)) {
      const ends = [1 - share, 1 + share].map((factor) =>
        roundLabelEu({ nutrient: "energy", amount: line.amount * factor }),
      );
      expect(line.printed95).toEqual(ends);
    }
  });
  it("is the two ends of each nutrient's interval as the rule rounds them", () => {
    const { perServing, per100GEaten } = macros;
    const us = new Map(labelUs(macros).lines.map((line) => [line.name, line]));
    for (const [name, nutrient, field] of [
      ["calories", "calories", "energyKcal"],
      ["total fat", "fat", "fatG"],
      ["sodium", "sodium", "sodiumMg"],
      ["protein", "protein", "proteinG"],
    ] as const) {
      expect(us.get(name)!.printed95).toEqual(
        perServing[field].interval95.map((amount) => roundLabelUs({ nutrient, amount: Math.max(0, amount) })),
      );
    }
    const eu = new Map(labelEu(macros).lines.map((line) => [line.name, line]));
    const salt = per100GEaten.sodiumMg.interval95.map((mg) =>
      roundLabelEu({ nutrient: "salt", amount: (2.5 * mg) / 1000 }),
    );
    expect(eu.get("salt")!.printed95).toEqual(salt);
    const carbohydrate = per100GEaten.carbohydrateG.interval95.map((g) =>
      roundLabelEu({ nutrient: "carbohydrate", amount: g - per100GEaten.fibreG.value }),
    );
    expect(eu.get("carbohydrate")!.printed95).toEqual(carbohydrate);
  });
});

describe("roundLabelEu", () => {
  it.each([
    ["energy", 1035.3, "1035"],
    ["energy", 247.5, "248"],
    ["fat", 12.5, "13"],
    ["fat", 9.96, "10.0"],
    ["fat", 10, "10"],
    ["fat", 0.51, "0.5"],
    ["fat", 0.5, "<0.5"],
    ["fat", 0, "0"],
    ["saturates", 0.15, "0.2"],
    ["saturates", 0.1, "<0.1"],
    ["salt", 1.25, "1.3"],
    ["salt", 0.015, "0.02"],
    ["salt", 0.0125, "<0.01"],
  ] as const)("%s %d prints %s", (nutrient, amount, printed) => {
    expect(roundLabelEu({ nutrient, amount })).toBe(printed);
  });

  it("refuses a nutrient without a rule and a negative amount", () => {
    expect(() => roundLabelEu({ nutrient: "vitamin C" as "fat", amount: 1 })).toThrow("roundLabelEu: nutrient");
    expect(() => roundLabelUs({ nutrient: "vitamin C" as "fat", amount: 1 })).toThrow("roundLabelUs: nutrient");
    expect(() => roundLabelUs({ nutrient: "fat", amount: -1 })).toThrow("amount of fat must be >= 0");
  });
});

describe("label rounding", () => {
  const amount = fc.double({ min: 0, max: 600, noNaN: true });
  const number = (printed: string): number => Number(printed.replace("<", "")) - (printed.startsWith("<") ? 0.001 : 0);

  it.each(["calories", "fat", "cholesterol", "sodium", "fibre", "protein"] as const)(
    "never falls as %s grows (US)",
    (nutrient) => {
      fc.assert(
        fc.property(amount, amount, (a, b) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const printed = [low, high].map((one) => number(roundLabelUs({ nutrient, amount: one })));
          expect(printed[0]).toBeLessThanOrEqual(printed[1]);
          expect(Math.abs(printed[1] - high)).toBeLessThanOrEqual(Math.max(5.001, 1));
        }),
      );
    },
  );

  it.each(["energy", "fat", "saturates", "protein", "salt"] as const)("never falls as %s grows (EU)", (nutrient) => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const printed = [low, high].map((one) => number(roundLabelEu({ nutrient, amount: one })));
        expect(printed[0]).toBeLessThanOrEqual(printed[1]);
        expect(Math.abs(printed[1] - high)).toBeLessThanOrEqual(0.501);
      }),
    );
  });
});
