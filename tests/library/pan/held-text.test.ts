import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heldText } from "../../../kernel-lib/library/src/pan/held-text";
import { grams } from "../../../kernel-lib/library/src/units/kitchen-units";

describe("heldText", () => {
  it("never says more than the pan holds", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 20000, noNaN: true }),
        fc.constantFrom("us" as const, "metric" as const),
        (brimG, units) => {
          const said = grams(heldText(brimG, units));
          expect(said).toBeLessThanOrEqual(brimG + 1e-4);
          expect(brimG - said).toBeLessThan(14.2);
        },
      ),
    );
  });
});
