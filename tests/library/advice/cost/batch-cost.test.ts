import fc from "fast-check";
import { batchCost } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { costTable } from "slabwright/views";
import { describe, expect, test } from "vitest";

const kitchen = { ...loadKitchen(), pantry: [] };
/** Every ingredient at a price of its own. */
const priced = { ...kitchen, ingredients: kitchen.ingredients.map((one, at) => ({ ...one, costPerKg: 1 + (at % 7) })) };
const variantId = fc.constantFrom(...kitchen.variants.map((one) => one.variantId));

describe("batchCost", () => {
  test("is the sum of mass times price, goes with prices and pans, and its doubt adds in squares", () => {
    fc.assert(
      fc.property(variantId, fc.integer({ min: 1, max: 4 }), (id, pans) => {
        const cost = batchCost({ kitchen: priced, variantId: id, pans });
        expect(cost.parts.reduce((sum, part) => sum + part.cost, 0)).toBeCloseTo(cost.batch.cost, 9);
        expect(cost.batch.se).toBeCloseTo(0.1 * Math.hypot(...cost.parts.map((part) => part.cost)), 9);
        expect(cost.piece.cost * cost.pieces).toBeCloseTo(cost.batch.cost, 9);
        expect(cost.serving.cost).toBeCloseTo(cost.piece.cost * cost.piecesPerServing, 9);
        expect(cost.waste.cost).toBeLessThan(cost.batch.cost);
        expect(batchCost({ kitchen: priced, variantId: id, pans: 2 * pans }).piece.cost).toBeCloseTo(
          cost.piece.cost,
          9,
        );
        const dearer = {
          ...priced,
          ingredients: priced.ingredients.map((one) => ({ ...one, costPerKg: 3 * one.costPerKg })),
        };
        expect(batchCost({ kitchen: dearer, variantId: id, pans }).batch.cost).toBeCloseTo(3 * cost.batch.cost, 9);
      }),
      { numRuns: 20 },
    );
  });

  test("a missing price is named, not taken as nothing", () => {
    const without = priced.ingredients.map((one) => (one.id === "oats-rolled" ? { ...one, costPerKg: null } : one));
    const asked = () => batchCost({ kitchen: { ...priced, ingredients: without }, variantId: "beet-lentil" });
    expect(asked).toThrow(
      /^What beet and lentil bites cost cannot be told yet: put a pack and its price into pantry\.csv for rolled oats, dry\.$/,
    );
  });

  test("the table says each cost with its doubt", () => {
    const costs = kitchen.variants.map((one) => batchCost({ kitchen: priced, variantId: one.variantId }));
    const { rows, notes } = costTable(costs);
    expect(rows).toHaveLength(costs.length);
    for (const row of rows) expect(row[2]).toMatch(/^\d+\.\d\d ± \d/);
    expect(notes.join(" ")).toMatch(/Ingredients alone, no packs, power or work/);
  });
});
