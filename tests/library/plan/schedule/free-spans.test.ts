import fc from "fast-check";
import { freeSpans } from "slabwright/plan";
import { describe, expect, test } from "vitest";

describe("freeSpans", () => {
  test("nothing is busy in a free span, and something is right before and after it", () => {
    const spans = fc.array(
      fc.record({ start: fc.integer({ min: 0, max: 60 }), lasts: fc.integer({ min: 1, max: 12 }) }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(spans, fc.integer({ min: 1, max: 10 }), (list, least) => {
        const busy = list.map(({ start, lasts }) => ({ start, end: start + lasts }));
        const at = (moment: number): boolean => busy.some(({ start, end }) => start <= moment && moment < end);
        const free = freeSpans(busy, least);
        for (const { from, until } of free) {
          expect(until - from).toBeGreaterThanOrEqual(least);
          expect([at(from - 1), at(until)]).toEqual([true, true]);
          for (let moment = from; moment < until; moment++) expect(at(moment)).toBe(false);
        }
        const first = Math.min(...busy.map(({ start }) => start));
        const last = Math.max(...busy.map(({ end }) => end));
        let empty = 0;
        for (let moment = first; moment < last; moment++) if (!at(moment)) empty++;
        if (least === 1) expect(free.reduce((sum, { from, until }) => sum + until - from, 0)).toBe(empty);
      }),
    );
  });
});
