import fc from "fast-check";
import { loadKitchen } from "slabwright/notebook";
import { describe, expect, test } from "vitest";
import { ingredientsNeeded } from "../../../../kernel-lib/library/src/advice/cost/ingredients-needed";

const kitchen = loadKitchen();
const variantId = fc.constantFrom(...kitchen.variants.map((one) => one.variantId));

describe("ingredientsNeeded", () => {
  test("mass is kept: what goes in is on the pieces or thrown away", () => {
    fc.assert(
      fc.property(
        variantId,
        fc.integer({ min: 1, max: 5 }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (id, pans, lost) => {
          const needed = ingredientsNeeded(kitchen, { variantId: id, pans, bowlLossPercent: lost });
          const { variant, batch, pieces, coatedPieceG, ingredients } = needed;
          const sum = (read: (one: (typeof ingredients)[number]) => number): number =>
            ingredients.reduce((total, one) => total + read(one), 0);
          expect(pieces).toBe(pans * batch.pieces.pieces);
          // a pot that boils down takes more in than the mix weighs
          const boiled = variant.formula.cookedG === undefined;
          if (boiled) expect(sum(({ mixG }) => mixG)).toBeCloseTo((pans * variant.batchG) / (1 - lost / 100), 6);
          if (boiled)
            expect(sum(({ mixG, coatingG, wasteG }) => mixG + coatingG - wasteG)).toBeCloseTo(pieces * coatedPieceG, 4);
          for (const { mixG, coatingG, wasteG } of ingredients)
            expect(wasteG).toBeLessThanOrEqual(mixG + coatingG + 1e-9);
        },
      ),
      { numRuns: 40 },
    );
  });
});
