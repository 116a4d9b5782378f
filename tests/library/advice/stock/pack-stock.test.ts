import { packStock } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { storageLife } from "slabwright/safety";
import { stockTable } from "slabwright/views";
import { describe, expect, test } from "vitest";
import { isTooLittle } from "../../../../kernel-lib/library/src/check/too-little";
import { storedFoodOf } from "../../../../kernel-lib/library/src/safety/cold/stored-food-of";

const kitchen = loadKitchen();
const pack = {
  packId: "one",
  variantId: "pollock-dill",
  packedOn: "2026-01-01",
  pieces: 30,
  keptC: -18,
  warmC: [],
  warmDays: [],
  packing: "tight" as const,
  note: null,
};

describe("packStock", () => {
  test("days and warm spells use a pack up by the additive rule", () => {
    const warm = { ...pack, packId: "two", warmC: [-8], warmDays: [2] };
    const { products } = packStock({ kitchen: { ...kitchen, packs: [pack, warm] }, asOf: "2026-02-10" });
    const [calm, spell] = products[0].packs;
    expect(calm.ageDays).toBe(40);
    expect(calm.life.used).toBeCloseTo(40 / 91, 9);
    expect(spell.life.used).toBeCloseTo((38 + 2 * 3) / 91, 9);
    expect(calm.useBy).toBe("2026-04-02");
    expect(products[0].plan.turns.map(({ id }) => id)).toEqual(["two", "one"]);
  });

  test("first in, first out where all are kept alike; a loose pack goes before", () => {
    const days = ["2026-02-01", "2026-01-05", "2026-01-20"];
    const packs = days.map((packedOn) => ({ ...pack, packId: packedOn, packedOn }));
    const turns = (more: typeof packs) =>
      packStock({ kitchen: { ...kitchen, packs: more }, asOf: "2026-02-02" }).products[0].plan.turns.map(
        ({ id }) => id,
      );
    expect(turns(packs)).toEqual([...days].sort());
    expect(turns([...packs, { ...pack, packId: "loose", packedOn: "2026-01-25", packing: "loose" as never }])[0]).toBe(
      "loose",
    );
  });

  test("it lasts as long as its pieces at so many a week, by product", () => {
    const { products } = packStock({ kitchen, piecesPerWeek: 14 });
    for (const { packs, plan } of products)
      expect(plan.lastsDays).toBeCloseTo(packs.reduce((sum, one) => sum + one.pack.pieces, 0) / 2, 9);
  });

  test("counts as what is raw in it, and a young kitchen is told what to note", () => {
    const foods = Object.fromEntries(
      kitchen.variants.map((variant) => [variant.variantId, storedFoodOf(variant.limit)]),
    );
    expect(foods).toMatchObject({ "turkey-sage": "raw poultry", "pollock-dill": "breaded fish" });
    expect(storageLife({ food: foods["turkey-sage"], steps: [] }).lifeDays).toBe(91);
    try {
      packStock({ kitchen: { ...kitchen, packs: [] } });
      expect.unreachable();
    } catch (error) {
      expect(isTooLittle(error)).toBe(true);
      expect((error as Error).message).toMatch(/^No pack is noted yet: put a line into packs\.csv/);
    }
  });

  test("the table says it in the kitchen's units, with what is used up and by when to eat it", () => {
    const table = stockTable(packStock({ kitchen }), "us");
    expect(table.rows.some(([, , , , kept]) => /^-4 °F, with warm spells/.test(String(kept)))).toBe(true);
    expect(table.notes.join(" ")).toMatch(/lasts \d+ days at 20 pieces a week.*This is quality, not safety/s);
  });
});
