import fc from "fast-check";
import { batchCost } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { costFigure, costTable } from "slabwright/views";
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

  test("missing prices are named, and the cost is at least that of the others", () => {
    const whole = batchCost({ kitchen: priced, variantId: "beet-lentil" });
    const names = whole.parts.map(({ name }) => name);
    fc.assert(
      fc.property(fc.subarray(names, { minLength: 1, maxLength: names.length - 1 }), (missing) => {
        const ingredients = priced.ingredients.map((one) =>
          missing.includes(one.name) ? { ...one, costPerKg: null } : one,
        );
        const least = batchCost({ kitchen: { ...priced, ingredients }, variantId: "beet-lentil" });
        expect(least.unpriced.map(({ name }) => name).sort()).toEqual([...missing].sort());
        expect([...least.parts, ...least.unpriced].map(({ name }) => name).sort()).toEqual([...names].sort());
        const known = whole.parts.filter(({ name }) => !missing.includes(name));
        expect(least.batch.cost).toBeCloseTo(
          known.reduce((sum, { cost }) => sum + cost, 0),
          9,
        );
        expect(least.piece.cost).toBeLessThan(whole.piece.cost);
        const { rows, notes } = costTable([least]);
        for (const cell of [2, 3, 4, 5, 7]) expect(rows[0][cell]).toMatch(/^at least \d+\.\d\d/);
        const told = notes.find((note) => note.startsWith("beet and lentil bites: at least what is priced costs"));
        expect(told).toContain(` for ${least.unpriced.map(({ name }) => name).join("; ")} (together `);
        expect(costFigure([least]).summary).toMatch(/^beet and lentil bites: a piece at least .* of what is priced/);
      }),
      { numRuns: 20 },
    );
    expect(costTable([whole]).rows[0].join()).not.toContain("at least");
    expect(costFigure([whole]).summary).not.toContain("at least");
  });

  test("nothing is told where nothing has a price, or only what is free", () => {
    const at = (free: number | null) =>
      priced.ingredients.map((one) => ({ ...one, costPerKg: one.id === "oats-rolled" ? free : null }));
    for (const free of [null, 0]) {
      const asked = () => batchCost({ kitchen: { ...priced, ingredients: at(free) }, variantId: "beet-lentil" });
      expect(asked).toThrow(
        /^What beet and lentil bites cost cannot be told yet: put a pack and its price into pantry\.csv for /,
      );
    }
    const some = { ...priced, ingredients: at(2) };
    expect(batchCost({ kitchen: some, variantId: "beet-lentil" }).parts.map(({ name }) => name)).toEqual([
      "rolled oats, dry",
    ]);
  });

  test("the table says each cost with its doubt", () => {
    const costs = kitchen.variants.map((one) => batchCost({ kitchen: priced, variantId: one.variantId }));
    const { rows, notes } = costTable(costs);
    expect(rows).toHaveLength(costs.length);
    for (const row of rows) expect(row[2]).toMatch(/^\d+\.\d\d ± \d/);
    expect(notes.join(" ")).toMatch(/Ingredients alone, no packs, power or work/);
  });
});
