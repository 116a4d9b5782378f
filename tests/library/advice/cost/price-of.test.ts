import { batchCost, priceOf, shoppingList } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { costFigure, costTable, shoppingTable } from "slabwright/views";
import { describe, expect, test } from "vitest";

const kitchen = loadKitchen();
const oats = kitchen.ingredients.find(({ id }) => id === "oats-rolled") as (typeof kitchen.ingredients)[number];
const item = { ingredientId: "oats-rolled", packG: 500, packPrice: 2, pricedOn: "2025-04-01", stockG: 100, note: null };

describe("priceOf", () => {
  test("is the pack's, surer when it is fresh", () => {
    const at = (asOf?: string, more: object = {}) =>
      priceOf({ ...kitchen, pantry: [{ ...item, ...more }] }, oats, asOf);
    expect(at("2025-04-01")).toEqual({ perKg: 4, doubtPercent: 3, ageDays: 0 });
    expect(at("2026-04-01")?.doubtPercent).toBeCloseTo(Math.hypot(3, 8), 9);
    expect(at("2026-04-01", { pricedOn: null })).toEqual({ perKg: 4, doubtPercent: 10, ageDays: null });
    expect(at("2026-04-01", { packPrice: null })).toBeNull();
    expect(priceOf({ ...kitchen, pantry: [] }, { ...oats, costPerKg: 7 })?.perKg).toBe(7);
  });
});

describe("the demo's costs", () => {
  const costs = kitchen.variants.map(({ variantId }) => batchCost({ kitchen, variantId }));

  test("a piece is mix, coating and waste; as eaten a kilogram costs more", () => {
    for (const cost of costs) {
      const { mix, coating, waste } = cost.inPiece;
      expect(mix + coating + waste).toBeCloseTo(cost.piece.cost, 9);
      expect(waste * cost.pieces).toBeCloseTo(cost.waste.cost, 9);
      expect(cost.eatenKilogram?.cost as number).toBeGreaterThan(cost.kilogram.cost);
      expect(cost.piece.se).toBeGreaterThan(0);
    }
    expect(costs.some(({ oldPrices }) => oldPrices.length > 0)).toBe(true);
    for (const { oldPrices } of costs)
      for (const { ageDays } of oldPrices) expect(ageDays as number).toBeGreaterThan(183);
    expect(costTable(costs).notes.join(" ")).toMatch(
      /Prices over half a year old, to be looked up again: .*\(\d+ months\)/,
    );
  });

  test("older prices, more doubt", () => {
    const later = batchCost({ kitchen, variantId: "beet-lentil", asOf: "2028-04-01" });
    const now = batchCost({ kitchen, variantId: "beet-lentil" });
    expect(later.batch.cost).toBeCloseTo(now.batch.cost, 9);
    expect(later.batch.se).toBeGreaterThan(2 * now.batch.se);
    expect(() => batchCost({ kitchen, variantId: "beet-lentil", asOf: "soon" })).toThrow(/asOf must be a day/);
  });

  test("table, figure and list say it with their doubt", () => {
    expect(costTable(costs).rows).toHaveLength(costs.length);
    expect(costFigure(costs).data).toHaveLength(3);
    expect(costFigure(costs).summary).toMatch(/a piece \S+ ± \S+, of it \d+ % coating and \d+ % thrown away/);
    const list = shoppingList({ kitchen, batches: [{ variantId: "beet-lentil" }] });
    expect(list.unpriced).toEqual([]);
    expect(list.costSe).toBeGreaterThan(0);
    const bought = list.lines.filter(({ packs }) => (packs ?? 0) > 0);
    expect(bought.length).toBeGreaterThan(0);
    for (const { buyG, packG } of bought) expect(buyG % (packG as number)).toBeCloseTo(0, 6);
    expect(shoppingTable(list, "us").rows.some(([, , packs]) => /of .*oz/.test(String(packs)))).toBe(true);
  });
});
