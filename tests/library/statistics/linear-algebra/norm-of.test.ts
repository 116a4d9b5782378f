import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normOf } from "../../../../kernel-lib/library/src/statistics/linear-algebra/norm-of";

describe("normOf", () => {
  it("is the square root of the sum of squares", () => {
    expect(normOf([3, -4])).toBe(5);
    expect([normOf([]), normOf([0, 0]), normOf([-2])]).toEqual([0, 0, 2]);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 1, maxLength: 50 }),
        (vector) => {
          expect(Math.abs(normOf(vector) - Math.hypot(...vector))).toBeLessThanOrEqual(1e-14 * Math.hypot(...vector));
        },
      ),
    );
  });

  it("neither overflows nor vanishes", () => {
    expect(normOf([3e200, 4e200])).toBeCloseTo(5e200, -186);
    expect(normOf([3e-200, 4e-200]) / 5e-200).toBeCloseTo(1, 14);
  });

  it("takes half a million entries", () => {
    expect(normOf(new Float64Array(500_000).fill(2))).toBeCloseTo(2 * Math.sqrt(500_000), 9);
  });

  it("is NaN or infinite where an entry is", () => {
    expect(normOf([1, Number.NaN])).toBeNaN();
    expect(normOf([1, Number.NEGATIVE_INFINITY])).toBe(Number.POSITIVE_INFINITY);
  });
});
