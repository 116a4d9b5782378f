import fc from "fast-check";
import { intraclassCorrelation } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

describe("intraclassCorrelation", () => {
  it("refuses scores without scatter, from which no interval follows", () => {
    expect(() =>
      intraclassCorrelation([
        [1, 2],
        [2, 3],
        [4, 5],
      ]),
    ).toThrow("must scatter about what thing and judge explain");
  });

  it("a judge who is two points higher counts against agreement, not against consistency; units do not count", () => {
    const cell = fc.double({ min: 0, max: 9, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 4, maxLength: 10 }), (scores) => {
        fc.pre(
          scores.some(
            ([a, b, c]) =>
              a + scores[0][1] !== b + scores[0][0] && Math.abs(a - b - scores[0][0] + scores[0][1]) > 0.01 && a !== c,
          ),
        );
        fc.pre(new Set(scores.map((row) => Math.round(row[0] + row[1] + row[2]))).size > 1);
        const plain = intraclassCorrelation(scores);
        const shifted = intraclassCorrelation(scores.map(([a, b, c]) => [a, b, c + 20]));
        expect(shifted.consistency.value).toBeCloseTo(plain.consistency.value, 6);
        if (plain.agreement.value > 0.01) expect(shifted.agreement.value).toBeLessThan(plain.agreement.value);
        const scaled = intraclassCorrelation(scores.map((row) => row.map((score) => 3 * score - 1)));
        expect(scaled.agreement.value).toBeCloseTo(plain.agreement.value, 9);
        for (const { value, confidence95 } of [plain.agreement, plain.consistency]) {
          expect(confidence95[0]).toBeLessThanOrEqual(value + 1e-9);
          expect(confidence95[1]).toBeGreaterThanOrEqual(value - 1e-9);
        }
      }),
    );
  });

  it("has an interval where things do not differ at all, as with scores of equal sums", () => {
    const { agreement } = intraclassCorrelation([
      [7, 8, 7],
      [7, 7, 8],
      [8, 7, 7],
    ]);
    expect(agreement.value).toBeLessThan(0);
    for (const end of agreement.confidence95) expect(end).not.toBeNaN();
    expect(agreement.confidence95[0]).toBeLessThanOrEqual(agreement.confidence95[1]);
  });
});
