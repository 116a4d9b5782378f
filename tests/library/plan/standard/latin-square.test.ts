import fc from "fast-check";
import { latinSquare } from "slabwright/plan";
import { describe, expect, it } from "vitest";

describe("latinSquare", () => {
  it("has each treatment once in every row and every column", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 12 }), fc.nat(999), (size, seed) => {
        const rows = latinSquare({ size, seed });
        const all = Array.from({ length: size }, (_, at) => at);
        expect(rows.length).toBe(size);
        for (const row of rows) expect(row.toSorted((a, b) => a - b)).toEqual(all);
        for (const at of all) expect(rows.map((row) => row[at]).toSorted((a, b) => a - b)).toEqual(all);
      }),
    );
  });

  it("reaches all 12 squares of size 3, each by its seed", () => {
    const seen = new Set(Array.from({ length: 300 }, (_, seed) => String(latinSquare({ size: 3, seed }))));
    expect(seen.size).toBe(12);
    expect(latinSquare({ size: 5, seed: 9 })).toEqual(latinSquare({ size: 5, seed: 9 }));
  });

  it("refuses other sizes", () => {
    expect(() => latinSquare({ size: 1 })).toThrow("size must be a whole number from 2 to 100");
    expect(() => latinSquare({ size: 2.5 })).toThrow("size must be a whole number from 2 to 100");
  });
});
