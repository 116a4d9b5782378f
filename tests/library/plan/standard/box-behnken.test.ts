import { boxBehnken } from "slabwright/plan";
import { describe, expect, it } from "vitest";

describe("boxBehnken", () => {
  it.each([3, 4, 5, 6, 7])(
    "of %i factors moves two or three at once, and runs no point twice but the centre",
    (factors) => {
      const points = boxBehnken({ factors, centres: 1 });
      expect(new Set(points.map(String)).size).toBe(points.length);
      const moving = new Set(points.slice(0, -1).map((point) => point.filter((code) => code !== 0).length));
      expect(moving).toEqual(new Set([factors < 6 ? 2 : 3]));
      expect(points.at(-1)).toEqual(Array.from({ length: factors }, () => 0));
    },
  );

  it("refuses other numbers of factors, and no centre", () => {
    expect(() => boxBehnken({ factors: 2 })).toThrow("factors must be a whole number from 3 to 7");
    expect(() => boxBehnken({ factors: 8 })).toThrow("factors must be a whole number from 3 to 7");
    expect(() => boxBehnken({ factors: 3, centres: 0 })).toThrow("as the quadratic cannot be told without");
  });
});
