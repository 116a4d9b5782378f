import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inchFraction } from "../../../kernel-lib/library/src/units/inch-fraction";
import { millimetres } from "../../../kernel-lib/library/src/units/kitchen-units";

describe("inchFraction", () => {
  it("prints lowest terms", () => {
    expect(inchFraction(6.35)).toBe("1/4 in");
    expect(inchFraction(12.7)).toBe("1/2 in");
    expect(inchFraction(25.4)).toBe("1 in");
    expect(inchFraction(0.2)).toBe("0 in");
    expect(inchFraction(25.3)).toBe("1 in");
  });

  it("reads back within half of the part that it rounds to", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 700, noNaN: true }),
        fc.constantFrom(16 as const, 32 as const),
        (mm, finest) => {
          expect(Math.abs(millimetres(inchFraction(mm, finest)) - mm)).toBeLessThanOrEqual(25.4 / (2 * finest) + 1e-9);
        },
      ),
    );
  });

  it("refuses parts that no ruler has", () => {
    expect(() => inchFraction(8, 10 as 16)).toThrow("inchFraction: finest must be 16 or 32, got 10");
  });
});
