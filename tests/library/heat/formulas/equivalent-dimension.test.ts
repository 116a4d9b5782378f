import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { equivalentDimension } from "../../../../kernel-lib/library/src/heat/formulas/equivalent-dimension";

describe("equivalentDimension", () => {
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
