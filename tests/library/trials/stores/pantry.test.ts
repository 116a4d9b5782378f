import { describe, expect, test } from "vitest";
import { readPantry } from "../../../../kernel-lib/library/src/trials/stores/pantry";

const read = (rows: string) =>
  readPantry(`ingredient,pack_g,price,priced,stock_g,note\n${rows}\n`, "pantry.csv", { units: "metric" });

describe("readPantry", () => {
  test("reads packs, prices, days and stock as people type them", () => {
    const { records, problems } = read("oats,1 lb 2 oz,2.40,3 Mar 2026,1/2 kg,by the door\nsalt,,,,,");
    expect(problems).toEqual([]);
    expect(records[0]).toMatchObject({ ingredientId: "oats", packPrice: 2.4, pricedOn: "2026-03-03", stockG: 500 });
    expect(records[0].packG).toBeCloseTo(510.29, 2);
    expect(records[1]).toMatchObject({ packG: null, packPrice: null, pricedOn: null, stockG: null });
  });

  test("a price is of a pack, and a day is a day", () => {
    expect(read("oats,,2.40,,,").problems[0]).toMatch(
      /column pack_g: expected the mass of the pack that has this price/,
    );
    expect(read("oats,500,2.40,2026-02-30,,").problems[0]).toMatch(/column priced: expected a day such as 2026-03-14/);
    expect(read("oats,500,-1,,,").problems[0]).toMatch(/column price: expected the price of a pack/);
  });
});
