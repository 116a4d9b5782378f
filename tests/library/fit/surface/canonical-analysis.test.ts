import { canonicalAnalysis, fitSurface } from "slabwright/fit";
import { centralComposite } from "slabwright/plan";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

const factors = ["a", "b"];
const { points } = centralComposite({ factors: 2, centres: [3, 2] });
const fitOf = (of: (a: number, b: number) => number, sd = 0.02, seed = 1) => {
  const random = seededRandom(seed);
  return fitSurface({ factors, points, y: points.map(([a, b]) => of(a, b) + random.normal(0, sd)) });
};

describe("canonicalAnalysis", () => {
  it("tells tops, bottoms, saddles and ridges apart", () => {
    const of = (p: number, q: number) =>
      canonicalAnalysis(fitOf((a, b) => p * (a - 0.2) ** 2 + q * (b + 0.1) ** 2)).kind;
    expect([of(-1, -2), of(1, 2), of(1, -1), of(-1, 0.001)]).toEqual(["highest", "lowest", "saddle", "ridge"]);
  });

  it("says when the stationary point lies beyond the trials", () => {
    const { inside, distance, reading } = canonicalAnalysis(fitOf((a, b) => -((a - 3) ** 2) - b * b));
    expect(inside).toBe(false);
    expect(distance).toBeCloseTo(3, 1);
    expect(reading).toContain("beyond the trials");
  });

  it("gives bends whose 95 % intervals hold the truth in 95 of 100 fits", () => {
    let held = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const { axes } = canonicalAnalysis(fitOf((a, b) => -((a - 0.2) ** 2) - 3 * b * b, 0.3, seed));
      const [low, high] = axes[0].interval95;
      if (low < -1 && high > -1) held++;
    }
    // 4 standard errors
    expect(Math.abs(held / 400 - 0.95)).toBeLessThan(0.044);
  });

  it("refuses a plane", () => {
    const plane = fitSurface({ factors, points, y: points.map(([a], at) => a + 0.1 * (at % 3)), form: "linear" });
    expect(() => canonicalAnalysis(plane)).toThrow("must be of a quadratic surface");
  });
});
