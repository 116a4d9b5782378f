import fc from "fast-check";
import { shoppingList } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { shoppingTable } from "slabwright/views";
import { describe, expect, test } from "vitest";
import { ingredientsNeeded } from "../../../../kernel-lib/library/src/advice/cost/ingredients-needed";

const kitchen = { ...loadKitchen(), pantry: [] };
/** Every ingredient at a price of its own. */
const priced = { ...kitchen, ingredients: kitchen.ingredients.map((one, at) => ({ ...one, costPerKg: 1 + (at % 7) })) };
const variantId = fc.constantFrom(...kitchen.variants.map((one) => one.variantId));

describe("shoppingList", () => {
  test("buys what is missing, in whole packs and never less", () => {
    const pack = fc.double({ min: 50, max: 2000, noNaN: true });
    fc.assert(
      fc.property(
        variantId,
        variantId,
        fc.double({ min: 0, max: 500, noNaN: true }),
        pack,
        (one, other, stock, packSize) => {
          const all = kitchen.ingredients.map(({ id }) => id);
          const list = shoppingList({
            kitchen: priced,
            batches: [{ variantId: one }, { variantId: other }],
            stockG: Object.fromEntries(all.map((id) => [id, stock])),
            packG: Object.fromEntries(all.filter((_, at) => at % 2 === 0).map((id) => [id, packSize])),
          });
          for (const { neededG, inStockG, buyG, packs } of list.lines) {
            expect(buyG + inStockG).toBeGreaterThanOrEqual(neededG - 1e-6);
            if (packs === null) expect(buyG).toBeCloseTo(Math.max(0, neededG - inStockG), 9);
            else {
              expect(buyG).toBeCloseTo(packs * packSize, 6);
              expect(buyG - packSize + inStockG).toBeLessThan(Math.max(neededG, inStockG) + 1e-6);
            }
          }
          const alone = [one, other].map((id) => ingredientsNeeded(kitchen, { variantId: id }).ingredients);
          const total = alone.flat().reduce((sum, { mixG, coatingG }) => sum + mixG + coatingG, 0);
          expect(list.lines.reduce((sum, { neededG }) => sum + neededG, 0)).toBeCloseTo(total, 6);
        },
      ),
      { numRuns: 30 },
    );
  });

  test("names what has no price, refuses strangers, and is told in the kitchen's units", () => {
    const list = shoppingList({ kitchen, batches: [{ variantId: "beet-lentil" }] });
    expect(list.cost).toBe(0);
    expect(list.unpriced).toHaveLength(list.lines.length);
    expect(shoppingTable(list, "us").columns[1].heading).toBe("buy");
    expect(shoppingTable(list).notes.join(" ")).toMatch(/No price is known for .*Read the label/);
    expect(() => shoppingList({ kitchen, batches: [] })).toThrow(/batches must hold at least one/);
    expect(() => shoppingList({ kitchen, batches: [{ variantId: "beet-lentil" }], stockG: { tongs: 1 } })).toThrow(
      /must name ingredients of the kitchen, got "tongs"/,
    );
  });
});
