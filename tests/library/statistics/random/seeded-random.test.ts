import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

describe("seededRandom", () => {
  it("repeats itself from the same seed and differs from another", () => {
    const one = seededRandom(42);
    const same = seededRandom(42);
    const other = seededRandom(43);
    const draws = Array.from({ length: 20 }, () => one.uniform());
    expect(Array.from({ length: 20 }, () => same.uniform())).toEqual(draws);
    expect(Array.from({ length: 20 }, () => other.uniform())).not.toEqual(draws);
  });
  it("has the moments of the uniform and the normal within 5 standard errors of 200,000 draws", () => {
    const random = seededRandom(1);
    const n = 200_000;
    let mean = 0;
    let normalMean = 0;
    let square = 0;
    let fourth = 0;
    for (let i = 0; i < n; i++) {
      mean += random.uniform() / n;
      const z = random.normal();
      normalMean += z / n;
      square += (z * z) / n;
      fourth += z ** 4 / n;
    }
    expect(Math.abs(mean - 0.5)).toBeLessThan((5 * Math.sqrt(1 / 12)) / Math.sqrt(n));
    expect(Math.abs(normalMean)).toBeLessThan(5 / Math.sqrt(n));
    expect(Math.abs(square - 1)).toBeLessThan((5 * Math.sqrt(2)) / Math.sqrt(n));
    expect(Math.abs(fourth - 3)).toBeLessThan((5 * Math.sqrt(96)) / Math.sqrt(n));
  });
  it("deals whole numbers evenly", () => {
    const random = seededRandom(3);
    const counts = [0, 0, 0, 0, 0, 0];
    for (let i = 0; i < 60_000; i++) counts[random.integer(6)]++;
    const chiSquared = counts.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
    expect(chiSquared).toBeLessThan(20.515); // qchisq(.999, 5), R 4.2.2
  });
  it("refuses a seed that is not a whole number", () => {
    expect(() => seededRandom(1.5)).toThrow("seededRandom: seed must be a whole number");
  });
});
