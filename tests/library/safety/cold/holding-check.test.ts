import fc from "fast-check";
import { HOLDING_LIMIT_MIN, type HoldingSpan, holdingCheck } from "slabwright/safety";
import { describe, expect, test } from "vitest";

const span = fc.option(
  fc
    .tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 60 }))
    .map(([least, more]): readonly [number, number] => [least, least + more]),
);

describe("holdingCheck", () => {
  test("passes only when the longest of all spans does, fails when the shortest does not", () => {
    fc.assert(
      fc.property(fc.array(span, { minLength: 1, maxLength: 5 }), (all) => {
        const spans = all.map((minutes, at): HoldingSpan => ({ what: `span ${at}`, minutes }));
        const { verdict } = holdingCheck({ what: "pieces", spans });
        const sum = (end: 0 | 1): number => all.reduce((total, one) => total + (one?.[end] ?? 0), 0);
        const isKnown = all.every((one) => one !== null);
        if (verdict === "passes") expect(isKnown && sum(1) <= HOLDING_LIMIT_MIN).toBe(true);
        if (verdict === "fails") expect(sum(0)).toBeGreaterThan(HOLDING_LIMIT_MIN);
        if (verdict === "not enough data") {
          expect(sum(0)).toBeLessThanOrEqual(HOLDING_LIMIT_MIN);
          expect(isKnown && sum(1) <= HOLDING_LIMIT_MIN).toBe(false);
        }
      }),
    );
  });

  test("says how long, what is missing and what to do", () => {
    const open = holdingCheck({ what: "egg wash", spans: [{ what: "on the counter", minutes: null }] });
    expect(open.sentence).toBe("egg wash: nobody noted how long it was out of the cold (on the counter), 4 h allowed.");
    expect(open.todo).toMatch(/^Take it as too long/);
    const spans = [
      { what: "cut", minutes: [20, 30] as const },
      { what: "coated", minutes: [10, 10] as const },
    ];
    expect(holdingCheck({ what: "pieces", spans })).toMatchObject({
      verdict: "passes",
      todo: null,
      sentence: "pieces: 30 to 40 min out of the cold, 4 h allowed (cut 30 min, coated 10 min).",
    });
    expect(open.source).toMatch(/3-501\.19.*from memory/);
    expect(() => holdingCheck({ what: "pieces", spans: [] })).toThrow(/spans must hold at least one/);
    expect(() => holdingCheck({ what: "x", spans: [{ what: "cut", minutes: [9, 3] }] })).toThrow(
      /minutes of cut must be/,
    );
  });
});
