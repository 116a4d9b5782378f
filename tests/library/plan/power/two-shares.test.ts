import { powerOfTwoShares, trialsForTwoShares } from "slabwright/plan";
import { describe, expect, it } from "vitest";

describe("trials for a difference of two shares", () => {
  it("agree with R 4.2.2: power.prop.test(p1 = .5, p2 = .75), power = .9 and tol = 1e-12, or n = 50", () => {
    expect(trialsForTwoShares({ shares: [0.5, 0.75] })).toBeCloseTo(76.70692845178, 6);
    expect(powerOfTwoShares({ shares: [0.5, 0.75] }, 50)).toBeCloseTo(0.7401659013314, 10);
  });

  it("see never against always as soon as chance alone would not make it", () => {
    expect(powerOfTwoShares({ shares: [0, 1] }, 2)).toBe(1);
    expect(powerOfTwoShares({ shares: [0, 1] }, 1)).toBe(0);
  });

  it("refuse shares that are equal", () => {
    expect(() => trialsForTwoShares({ shares: [0.5, 0.5] })).toThrow("shares must differ");
  });
});
