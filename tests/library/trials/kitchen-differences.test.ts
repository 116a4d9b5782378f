import { resolve } from "node:path";
import fc from "fast-check";
import { loadKitchen } from "slabwright";
import { describe, expect, it } from "vitest";
import { kitchenDifferences } from "../../../kernel-lib/library/src/trials/kitchen-differences";

const kitchen = loadKitchen(resolve(__dirname, "../../../data"));

describe("kitchenDifferences", () => {
  it("finds none between a kitchen and itself, whatever the order of its rows", () => {
    const turned = {
      ...kitchen,
      pans: kitchen.pans.toReversed(),
      variants: kitchen.variants.toReversed(),
      trials: kitchen.trials.toReversed(),
    };
    expect(kitchenDifferences({ before: kitchen, after: turned })).toEqual([]);
  });

  it("names prices, packs in the freezer and the day", () => {
    const [item, ...pantry] = kitchen.pantry ?? [];
    const [pack, ...packs] = kitchen.packs ?? [];
    const { day: _, ...dayless } = kitchen;
    const after = { ...dayless, pantry: [{ ...item, packPrice: 77 }, ...pantry], packs };
    const found = kitchenDifferences({ before: kitchen, after });
    expect(found).toHaveLength(3);
    expect(found).toEqual(
      expect.arrayContaining([
        { of: "day", id: "day.csv", field: null, before: "there", after: null },
        { of: "pantry", id: item.ingredientId, field: "packPrice", before: String(item.packPrice), after: "77" },
        { of: "pack", id: pack.packId, field: null, before: "there", after: null },
      ]),
    );
  });

  it("names what is new, what is gone, and each field that changed, deep inside a formula too", () => {
    const [first, ...others] = kitchen.variants;
    const mix = first.formula.mix.map((line, at) => (at === 0 ? { ...line, massG: 999 } : line));
    const changed = { ...first, batchG: 1200, formula: { ...first.formula, mix } };
    const [gone, ...trials] = kitchen.trials;
    const after = {
      ...kitchen,
      variants: [changed, ...others],
      trials: [...trials, { ...gone, trialId: "ZZ-99" }],
    };
    const found = kitchenDifferences({ before: kitchen, after });
    expect(found.filter(({ of }) => of === "trial")).toEqual([
      { of: "trial", id: gone.trialId, field: null, before: "there", after: null },
      { of: "trial", id: "ZZ-99", field: null, before: null, after: "there" },
    ]);
    expect(found).toContainEqual({
      of: "variant",
      id: first.variantId,
      field: "batchG",
      before: String(first.batchG),
      after: "1200",
    });
    expect(found.filter(({ of }) => of === "formula").map(({ field }) => field)).toEqual(["mix.0.massG"]);
  });

  it("finds any number of a trial that is changed, and calls rounding in the last places none", () => {
    const numbers = ["timeMin", "setpointC", "startC", "thicknessMm"] as const;
    fc.assert(
      fc.property(
        fc.nat(kitchen.trials.length - 1),
        fc.constantFrom(...numbers),
        fc.double({ min: 1e-6, max: 2, noNaN: true }),
        (at, field, share) => {
          const change = (by: number): typeof kitchen => ({
            ...kitchen,
            trials: kitchen.trials.map((trial, index) =>
              index === at ? { ...trial, [field]: trial[field] * (1 + by) } : trial,
            ),
          });
          const found = kitchenDifferences({ before: kitchen, after: change(share) });
          expect(found.map((one) => [one.id, one.field])).toEqual([[kitchen.trials[at].trialId, field]]);
          expect(kitchenDifferences({ before: kitchen, after: change(1e-12) })).toEqual([]);
        },
      ),
    );
  });
});
