import fc from "fast-check";
import { kendallW } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

const table = fc.tuple(fc.integer({ min: 2, max: 9 }), fc.integer({ min: 2, max: 6 })).chain(([things, judges]) =>
  fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: judges, maxLength: judges }), {
    minLength: things,
    maxLength: things,
  }),
);

describe("kendallW", () => {
  it("is 1 when all judges have one order, whatever their scale, and lies between 0 and 1", () => {
    expect(
      kendallW([
        [1, 10, 5],
        [2, 30, 6],
        [3, 31, 9],
      ]).w,
    ).toBeCloseTo(1, 12);
    fc.assert(
      fc.property(table, (scores) => {
        const { w } = kendallW(scores);
        if (Number.isNaN(w))
          expect(scores[0].every((_, judge) => new Set(scores.map((row) => row[judge])).size === 1)).toBe(true);
        else expect(w >= -1e-12 && w <= 1 + 1e-12).toBe(true);
      }),
    );
  });

  it("counts order alone: a judge's scale may be stretched, and things and judges change places in the table", () => {
    fc.assert(
      fc.property(table, (scores) => {
        const { w } = kendallW(scores);
        const stretched = scores.map((row) => row.map((score, judge) => score ** 3 * (judge + 1) - 5)).reverse();
        const turned = stretched.map((row) => [...row].reverse());
        expect(kendallW(turned).w).toBeCloseTo(w, 10);
      }),
    );
  });

  it("refuses a table that is no table", () => {
    expect(() => kendallW([[1, 2]])).toThrow("at least two rows");
    expect(() => kendallW([[1], [2]])).toThrow("at least two columns, one a judge, got 1");
    expect(() => kendallW([[1, 2], [3]])).toThrow("kendallW: row 1 must have 2 scores as the first has, got 1");
    expect(() =>
      kendallW([
        [1, Number.NaN],
        [3, 4],
      ]),
    ).toThrow("row 0 must hold finite numbers");
  });
});
