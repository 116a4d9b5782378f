import fc from "fast-check";
import { fullFactorial } from "slabwright/plan";
import { describe, expect, it } from "vitest";

describe("fullFactorial", () => {
  it("holds every combination once, each factor evenly over -1 to 1 and orthogonal to the others", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 2, max: 5 }), { minLength: 1, maxLength: 4 }), (levels) => {
        const points = fullFactorial({ levels });
        expect(new Set(points.map(String)).size).toBe(levels.reduce((product, count) => product * count, 1));
        for (const [one, count] of levels.entries()) {
          const values = [...new Set(points.map((point) => point[one]))].toSorted((a, b) => a - b);
          values.forEach((value, at) => {
            expect(value).toBeCloseTo(-1 + (2 * at) / (count - 1), 12);
          });
          expect(values.length).toBe(count);
          for (let other = 0; other < one; other++)
            expect(points.reduce((sum, point) => sum + point[one] * point[other], 0)).toBeCloseTo(0, 10);
        }
      }),
    );
  });

  it("changes the first factor fastest", () => {
    expect(fullFactorial({ levels: [2, 2] })).toEqual([
      [-1, -1],
      [1, -1],
      [-1, 1],
      [1, 1],
    ]);
  });

  it("refuses one level, no factor and millions of runs", () => {
    expect(() => fullFactorial({ levels: [] })).toThrow("must hold at least one factor");
    expect(() => fullFactorial({ levels: [2, 1] })).toThrow("as a factor at one level tells nothing, got 1");
    expect(() => fullFactorial({ levels: Array.from({ length: 21 }, () => 2) })).toThrow(
      "take fewer factors or levels",
    );
  });
});
