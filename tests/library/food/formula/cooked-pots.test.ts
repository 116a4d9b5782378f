import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { COMPOSITION_FIELDS } from "../../../../kernel-lib/library/src/food/composition/composition";
import type { Formula } from "../../../../kernel-lib/library/src/food/formula/formula";
import { type FormulaTotals, formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { scaleFormula } from "../../../../kernel-lib/library/src/food/formula/scale-formula";
import { NUTRIENT_NAMES } from "../../../../kernel-lib/library/src/food/ingredient/nutrients";
import { mixDensity } from "../../../../kernel-lib/library/src/food/thermal/mix-density";
import { pieceMacros } from "../../../../kernel-lib/library/src/macros/piece-macros";
import { formulaTable } from "../../../../kernel-lib/library/src/views/food/formula-table";
import { demoFormula, INGREDIENTS } from "../kitchen-data";

const POLENTA = [
  { ingredient: "cornmeal", amount: "200 g", pot: "polenta" },
  { ingredient: "water", amount: "800 g", pot: "polenta" },
];
const REST = [
  { ingredient: "cheddar", amount: "90 g" },
  { ingredient: "water", amount: "10 g" },
];
const base = { ...demoFormula("beet-lentil"), id: "polenta-slab", mix: [...POLENTA, ...REST] };
const cooked = (cookedG: Formula["cookedG"], mix: Formula["mix"] = base.mix): FormulaTotals =>
  formulaTotals({ ...base, mix, cookedG }, INGREDIENTS);
const raw = formulaTotals(
  { ...base, mix: base.mix.map(({ ingredient, amount }) => ({ ingredient, amount })) },
  INGREDIENTS,
);

describe("cookedPots, through formulaTotals", () => {
  it("takes the water that boiled off out of the pot, and nothing else", () => {
    const { mixG, pots, mix, composition } = cooked({ polenta: "850 g" });
    expect(pots).toEqual([{ pot: "polenta", lines: [0, 1], rawG: 1000, cookedG: 850, waterLostG: 150 }]);
    expect(mixG).toBeCloseTo(950, 9);
    for (const name of NUTRIENT_NAMES) if (name !== "waterG") expect(mix.totals[name], name).toBe(raw.mix.totals[name]);
    expect(mix.totals.waterG).toBeCloseTo((raw.mix.totals.waterG as number) - 150, 9);
    expect(composition.waterFraction).toBeCloseTo((1100 * raw.composition.waterFraction - 150) / 950, 9);
    expect(composition.proteinFraction).toBeCloseTo((1100 * raw.composition.proteinFraction) / 950, 9);
  });

  it("takes one mass for the whole mix, as a number of grams or in pounds and ounces", () => {
    const mix = base.mix.map(({ ingredient, amount }) => ({ ingredient, amount }));
    expect(cooked(992, mix).mixG).toBe(992);
    expect(cooked("2 lb 3 oz", mix).mixG).toBeCloseTo(992.23, 2);
    expect(cooked("2 lb 3 oz", mix).pots[0]).toMatchObject({ pot: null, lines: [0, 1, 2, 3] });
  });

  it("is the mix with less water in it, whatever is boiled off", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 750, noNaN: true }), (lostG) => {
        const boiled = cooked({ polenta: 1000 - lostG });
        const less = formulaTotals(
          {
            ...base,
            mix: [
              { ingredient: "cornmeal", amount: "200 g" },
              { ingredient: "cheddar", amount: "90 g" },
              { ingredient: "distilled", amount: `${Math.max(0.001, 810 - lostG * 1)} g` },
            ],
          },
          [...INGREDIENTS, PURE],
        );
        for (const field of COMPOSITION_FIELDS)
          expect(boiled.composition[field]).toBeCloseTo(less.composition[field], 2);
        expect(COMPOSITION_FIELDS.reduce((sum, field) => sum + boiled.composition[field], 0)).toBeCloseTo(1, 9);
        expect(mixDensity(boiled.composition)).toBeGreaterThanOrEqual(mixDensity(raw.composition) - 1e-9);
      }),
    );
  });

  it("refuses a pot that grew, and one that lost more than its water", () => {
    expect(() => cooked({ polenta: 1001 })).toThrow(
      "polenta-slab: cookedG of polenta must be at most the 1000.0 g that went in; water that is taken up is a line of its own, got 1001",
    );
    expect(() => cooked({ polenta: 150 })).toThrow(
      "cookedG of polenta must be at least 180.3 g, as only 819.7 g of what went in are water, got 150",
    );
    // dry to the last drop, which no cook manages, is the end of what is allowed
    const { composition } = cooked({ polenta: 180.33 });
    expect(composition.waterFraction).toBeGreaterThan(0);
  });

  it("scales with the batch, cooked mass and water lost too", () => {
    const scaled = scaleFormula(cooked({ polenta: 850 }), { mixG: 475 });
    expect(scaled.factor).toBeCloseTo(0.5, 12);
    expect(scaled.lines[1].massG).toBeCloseTo(400, 9);
    expect(scaled.pots[0]).toMatchObject({ pot: "polenta", rawG: 500, cookedG: 425, waterLostG: 75 });
  });

  it("concentrates what is in a piece, with the doubt of the cooked mass", () => {
    const piece = (totals: FormulaTotals): ReturnType<typeof pieceMacros> => pieceMacros({ totals, pieceG: 20 });
    const [before, after] = [piece({ ...raw, layers: [] }), piece({ ...cooked({ polenta: 850 }), layers: [] })];
    expect(after.perPiece.energyKcal.value / before.perPiece.energyKcal.value).toBeCloseTo(1100 / 950, 9);
    expect(after.perPiece.waterG.value).toBeCloseTo(
      (20 * (cooked({ polenta: 850 }).mix.per100G.waterG as number)) / 100,
      9,
    );
    expect(after.energyDoubt.map(({ source }) => source)).toContain("cooked mass of polenta");
    // half a per cent of 850 g in 950 g, by hand
    const share = after.energyDoubt.find(({ source }) => source === "cooked mass of polenta")?.share as number;
    const { value, standardError } = after.perPiece.energyKcal;
    expect(Math.sqrt(share) * standardError).toBeCloseTo((value * 0.005 * 850) / 950, 6);
  });

  it("shows in the table what boiled off, so that the shares sum to 100", () => {
    const totals = cooked({ polenta: 850 });
    const { rows, title } = formulaTable(totals);
    expect(title).toContain("950 g of mix");
    expect(rows.at(-1)).toEqual([
      "water boiled off polenta",
      null,
      -150,
      expect.closeTo(-15.789, 3),
      "cooked down to 850 g",
    ]);
    expect(rows.reduce((sum, row) => sum + (row[3] as number), 0)).toBeCloseTo(100, 9);
    const half = formulaTable(totals, scaleFormula(totals, { mixG: 475 }));
    expect(half.rows.at(-1)).toMatchObject({ 2: -75, 4: "cooked down to 425 g" });
  });

  it("prices what is left", () => {
    const priced = INGREDIENTS.map((one) => ({ ...one, costPerKg: one.id === "water" ? 0 : 2 }));
    const totals = formulaTotals({ ...base, cookedG: { polenta: 850 } }, priced);
    expect(totals.costPerKg).toBeCloseTo((2 * 0.29) / 0.95, 9);
  });
});

const water = INGREDIENTS.find(({ id }) => id === "water") as (typeof INGREDIENTS)[number];
/** Water and nothing else: tap water of the table holds 0.1 % ash. */
const PURE = { ...water, id: "distilled", per100G: { ...water.per100G, waterG: 100, ashG: 0 } };
