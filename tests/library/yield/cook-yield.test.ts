import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cookYield } from "../../../kernel-lib/library/src/yield/cook-yield";

describe("cookYield", () => {
  it("gives yield, loss and the scale's doubt", () => {
    const result = cookYield({ massBeforeG: 240, massAfterG: 198, scaleErrorG: 1 });
    expect(result.yieldPercent).toBeCloseTo(82.5, 10);
    expect(result.lossPercent).toBeCloseTo(17.5, 10);
    expect(result.lossG).toBe(42);
    // By hand: u = 1/√3 g; u(y) = 100 · (u / 240) · √(1 + 0.825²)
    expect(result.standardErrorPercent).toBeCloseTo(((100 / Math.sqrt(3)) * Math.sqrt(1 + 0.825 ** 2)) / 240, 7);
    expect(result.interval95[0]).toBeLessThan(82.5);
  });

  it("is sure when the scale is", () => {
    expect(cookYield({ massBeforeG: 200, massAfterG: 150, scaleErrorG: 0 }).standardErrorPercent).toBe(0);
  });

  it("keeps loss and yield at 100 together, and the doubt smaller for larger masses", () => {
    const mass = fc.double({ min: 10, max: 5000, noNaN: true });
    fc.assert(
      fc.property(mass, fc.double({ min: 0.3, max: 1, noNaN: true }), (massBeforeG, kept) => {
        const one = cookYield({ massBeforeG, massAfterG: massBeforeG * kept });
        const two = cookYield({ massBeforeG: 2 * massBeforeG, massAfterG: 2 * massBeforeG * kept });
        expect(one.yieldPercent + one.lossPercent).toBeCloseTo(100, 9);
        expect(two.standardErrorPercent).toBeLessThan(one.standardErrorPercent);
      }),
    );
  });

  it("refuses a gain above its bound, naming both masses, and takes one that is allowed", () => {
    expect(() => cookYield({ massBeforeG: 100, massAfterG: 112 })).toThrow(
      "cookYield: massAfterG must be at most 2 % above massBeforeG 100 g (were the two masses swapped?), got 112",
    );
    expect(cookYield({ massBeforeG: 100, massAfterG: 280, largestGainPercent: 300 }).lossPercent).toBeCloseTo(-180, 9);
    expect(() => cookYield({ massBeforeG: 0, massAfterG: 1 })).toThrow("massBeforeG must be > 0 g");
  });
});
