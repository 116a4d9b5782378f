import { describe, expect, it } from "vitest";
import { crispPriors, priorValue } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-priors";

describe("crispPriors", () => {
  const priors = crispPriors({ applianceIds: ["basket", "oven"], crustWaterKgM3: 400, coated: true });

  it("states for each where it comes from and what would tell more", () => {
    expect(new Set(priors.map((prior) => prior.name)).size).toBe(priors.length);
    for (const prior of priors) {
      expect(prior.from.length).toBeGreaterThan(3);
      expect(prior.informedBy.length).toBeGreaterThan(10);
      expect(prior.spread).toBeGreaterThan(prior.scale === "log" ? 1 : 0);
    }
  });

  it("has a coefficient of median 40 and factor 1.6 for each appliance", () => {
    const [basket] = priors;
    expect(basket).toMatchObject({ name: "coefficient:basket", middle: 40, spread: 1.6, scale: "log" });
    expect(priorValue(basket, 1)).toBeCloseTo(64, 10);
    expect(priorValue(basket, -1)).toBeCloseTo(25, 10);
    const drip = priors.find((prior) => prior.name === "drip")!;
    expect(priorValue(drip, 2)).toBeCloseTo(0.03, 12);
  });
});
