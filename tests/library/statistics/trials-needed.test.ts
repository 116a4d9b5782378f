import {
  noncentralFCdf,
  noncentralTCdf,
  powerOfTwoMeans,
  seededRandom,
  studentTCdf,
  studentTQuantile,
  trialsForSeveralMeans,
  trialsForTwoMeans,
  trialsForTwoShares,
} from "slabwright/statistics";
import { describe, expect, it } from "vitest";

// R 4.2.2: pt(2, 10, 1), pt(-1, 5, 2), pt(3, 4.5, 6), power.t.test(..., type = "paired")
const REFERENCE = {
  pt2: 0.807611562530311,
  ptNegative: 0.00231637565416343,
  ptFar: 0.0142132838426663,
  pf: 0.5489678908785349, // scipy 1.17.1 ncf.cdf: R's own series stops at an error of 1e-9
  pfFar: 0.4067733710965896, // scipy 1.17.1
  paired: 12.58546300571, // tol = 1e-12
  twoGroups: 22.02109557009, // tol = 1e-12
};

describe("noncentral distributions", () => {
  it("agree with R 4.2.2 (t) and scipy (F), to 10 decimals", () => {
    expect(noncentralTCdf(2, 10, 1)).toBeCloseTo(REFERENCE.pt2, 10);
    expect(noncentralTCdf(-1, 5, 2)).toBeCloseTo(REFERENCE.ptNegative, 9);
    expect(noncentralTCdf(3, 4.5, 6)).toBeCloseTo(REFERENCE.ptFar, 10);
    expect(noncentralFCdf(3, 2, 10, 4)).toBeCloseTo(REFERENCE.pf, 10);
    expect(noncentralFCdf(10, 3, 7.5, 30)).toBeCloseTo(REFERENCE.pfFar, 10);
  });
  it("are the central ones at noncentrality 0", () => {
    expect(noncentralTCdf(1.3, 6, 0)).toBeCloseTo(studentTCdf(1.3, 6), 12);
  });
});

describe("trials needed, against R 4.2.2", () => {
  it("power.t.test(delta = 1, sd = 1, power = .9): two groups, pairs, and power at 20", () => {
    expect(trialsForTwoMeans({ difference: 1, sd: 1 })).toBeCloseTo(REFERENCE.twoGroups, 8);
    expect(powerOfTwoMeans({ difference: 1, sd: 1 }, 20)).toBeCloseTo(0.8689528017, 9);
    expect(trialsForTwoMeans({ difference: 1, sd: 1, paired: true })).toBeCloseTo(REFERENCE.paired, 8);
  });
  it("power.prop.test(p1 = .5, p2 = .75, power = .9)", () => {
    expect(Math.abs(trialsForTwoShares({ shares: [0.5, 0.75] }) / 76.70693011 - 1)).toBeLessThan(1e-6);
  });
  it("power.anova.test(groups = 4, between.var = 1, within.var = 3, power = .8)", () => {
    expect(trialsForSeveralMeans({ groups: 4, betweenVariance: 1, withinVariance: 3 }, 0.8)).toBeCloseTo(
      11.92613096,
      4,
    );
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
  it("refuse a difference of zero and shares that are equal", () => {
    expect(() => trialsForTwoMeans({ difference: 0, sd: 1 })).toThrow("difference must be > 0");
    expect(() => trialsForTwoShares({ shares: [0.5, 0.5] })).toThrow("shares must differ");
  });
});
