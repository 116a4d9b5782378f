import fc from "fast-check";
import { stockPlan } from "slabwright/safety";
import { describe, expect, test } from "vitest";

const pack = fc.record({
  pieces: fc.integer({ min: 1, max: 60 }),
  leftDays: fc.double({ min: 0, max: 120, noNaN: true }),
});

describe("stockPlan", () => {
  test("all pieces are eaten at the stated rate, and no order of the packs makes the latest less late", () => {
    fc.assert(
      fc.property(fc.array(pack, { minLength: 1, maxLength: 4 }), fc.integer({ min: 1, max: 200 }), (list, rate) => {
        const packs = list.map((one, at) => ({ id: String(at), ...one }));
        const { turns, lastsDays } = stockPlan({ packs, piecesPerWeek: rate });
        expect(lastsDays).toBeCloseTo((7 * list.reduce((sum, { pieces }) => sum + pieces, 0)) / rate, 9);
        const worst = Math.min(...turns.map(({ spareDays }) => spareDays));
        for (const order of orders(packs)) {
          let day = 0;
          const spare = order.map(({ pieces, leftDays }) => {
            day += (7 * pieces) / rate;
            return leftDays - day;
          });
          expect(worst).toBeGreaterThanOrEqual(Math.min(...spare) - 1e-9);
        }
      }),
      { numRuns: 50 },
    );
  });

  test("counts the pieces that come too late", () => {
    const packs = [
      { id: "a", pieces: 70, leftDays: 4 },
      { id: "b", pieces: 10, leftDays: 30 },
    ];
    // ten a day: after four days 40 of the 70 are eaten
    expect(stockPlan({ packs, piecesPerWeek: 70 }).tooLate).toBe(30);
    expect(stockPlan({ packs: [], piecesPerWeek: 70 })).toMatchObject({ turns: [], lastsDays: 0, tooLate: 0 });
    expect(() => stockPlan({ packs: [{ id: "a", pieces: 0, leftDays: 1 }], piecesPerWeek: 7 })).toThrow(
      /pieces of a must be a whole number from 1, got 0/,
    );
  });
});

function orders<T>(list: readonly T[]): T[][] {
  if (list.length === 0) return [[]];
  return list.flatMap((one, at) => orders([...list.slice(0, at), ...list.slice(at + 1)]).map((rest) => [one, ...rest]));
}
