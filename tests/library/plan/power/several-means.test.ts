import { powerOfSeveralMeans, powerOfTwoMeans, trialsForSeveralMeans } from "slabwright/plan";
import { describe, expect, it } from "vitest";

describe("trials for a spread of several means", () => {
  it("agree with R 4.2.2: power.anova.test", () => {
    // groups = 4, between.var = 1, within.var = 3, power = .8
    expect(trialsForSeveralMeans({ groups: 4, betweenVariance: 1, withinVariance: 3 }, 0.8)).toBeCloseTo(
      11.92613095774,
      4,
    );
    // n = 12
    expect(powerOfSeveralMeans({ groups: 4, betweenVariance: 1, withinVariance: 3 }, 12)).toBeCloseTo(0.8029537, 6);
    // groups = 3, between.var = .4, within.var = 1, n = 9
    expect(powerOfSeveralMeans({ groups: 3, betweenVariance: 0.4, withinVariance: 1 }, 9)).toBeCloseTo(0.60975263, 6);
  });

  it("are, of two groups, those of two means, but for the far tail", () => {
    // means 0 and 1: their variance with n - 1 in its divisor is 1/2
    const several = powerOfSeveralMeans({ groups: 2, betweenVariance: 0.5, withinVariance: 1 }, 20);
    expect(several).toBeCloseTo(powerOfTwoMeans({ difference: 1, sd: 1 }, 20), 6);
  });
});
