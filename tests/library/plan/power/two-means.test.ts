import { powerOfTwoMeans, trialsForTwoMeans } from "slabwright/plan";
import { seededRandom, studentTQuantile } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

// R 4.2.2, power.t.test(delta = 1, sd = 1, power = .9, tol = 1e-12): two groups; type = "paired"; and paired with
// delta = .5, sd = 1, power = .8
const REFERENCE = { twoGroups: 22.02109557009, paired: 12.58546300571, pairedHalf: 33.3672039788 };

describe("trials for a difference of two means", () => {
  it("agree with R 4.2.2: two groups, pairs, and power at 20", () => {
    expect(trialsForTwoMeans({ difference: 1, sd: 1 })).toBeCloseTo(REFERENCE.twoGroups, 8);
    expect(powerOfTwoMeans({ difference: 1, sd: 1 }, 20)).toBeCloseTo(0.8689528017, 9);
    expect(trialsForTwoMeans({ difference: 1, sd: 1, paired: true })).toBeCloseTo(REFERENCE.paired, 8);
    expect(trialsForTwoMeans({ difference: 0.5, sd: 1, paired: true }, 0.8)).toBeCloseTo(REFERENCE.pairedHalf, 6);
  });

  it("promise what simulated kitchens then see", () => {
    const random = seededRandom(6);
    let seen = 0;
    const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
    for (let run = 0; run < 2000; run++) {
      const one = Array.from({ length: 10 }, () => random.normal(0, 1));
      const other = Array.from({ length: 10 }, () => random.normal(1.2, 1));
      const [a, b] = [mean(one), mean(other)];
      const pooled = Math.sqrt(
        (one.reduce((s, v) => s + (v - a) ** 2, 0) + other.reduce((s, v) => s + (v - b) ** 2, 0)) / 18,
      );
      if (Math.abs(b - a) / (pooled * Math.sqrt(0.2)) > studentTQuantile(0.975, 18)) seen++;
    }
    const promised = powerOfTwoMeans({ difference: 1.2, sd: 1 }, 10);
    expect(Math.abs(seen / 2000 - promised)).toBeLessThan(4 * Math.sqrt((promised * (1 - promised)) / 2000));
  });

  it("refuse a difference of zero", () => {
    expect(() => trialsForTwoMeans({ difference: 0, sd: 1 })).toThrow("difference must be > 0");
  });
});
