import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { equivalentDimension } from "../../../../kernel-lib/library/src/heat/formulas/equivalent-dimension";

describe("equivalentDimension", () => {
  test("does not mind which of the two sides is told first, and refuses sides below the shortest", () => {
    for (const method of ["pham", "cleland"] as const)
      expect(equivalentDimension({ biot: 1, sideRatios: [2, 1.5], method })).toBe(
        equivalentDimension({ biot: 1, sideRatios: [1.5, 2], method }),
      );
    expect(() => equivalentDimension({ biot: 1, sideRatios: [0.9, 2] })).toThrow("sideRatios[0] must be between 1");
    expect(() => equivalentDimension({ biot: 1, sideRatios: [2, 0.9] })).toThrow("sideRatios[1] must be between 1");
    expect(() => equivalentDimension({ biot: 0, sideRatios: [2, 2] })).toThrow("biot must be > 0");
  });
  test("E falls from 1 + 1/β1 + 1/β2 as the inner resistance grows", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 8, noNaN: true }),
        fc.double({ min: 1, max: 8, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        (one, other, biot) => {
          const e = equivalentDimension({ biot, sideRatios: [one, other] });
          expect(e).toBeGreaterThanOrEqual(1);
          expect(e).toBeLessThanOrEqual(1 + 1 / one + 1 / other + 1e-9);
        },
      ),
    );
  });
});
