import { describe, expect, it } from "vitest";
import { censoredResidual } from "../../../../kernel-lib/library/src/crisp/calibration/censored-residual";
import { normalCdf } from "../../../../kernel-lib/library/src/statistics/distributions/normal-distribution";

describe("censoredResidual", () => {
  it("is a plain residual for a narrow interval", () => {
    for (const z of [-4, -1, 0, 0.5, 3]) expect(censoredResidual(z - 1e-3, z + 1e-3)).toBeCloseTo(z, 5);
  });

  it("has half its square as the loss of log-likelihood against the best place", () => {
    const chance = (low: number, high: number): number => normalCdf(high) - normalCdf(low);
    const half = censoredResidual(0.5, 2.5) ** 2 / 2;
    expect(half).toBeCloseTo(Math.log(chance(-1, 1) / chance(0.5, 2.5)), 10);
    expect(censoredResidual(1, Number.POSITIVE_INFINITY) ** 2 / 2).toBeCloseTo(-Math.log(1 - normalCdf(1)), 10);
  });

  it("knows the tail of the normal far out to six digits: R 4.2.2, pnorm(-10), and −log₁₀ Q of Abramowitz & Stegun, table 26.2", () => {
    const tail = (x: number): number => -(censoredResidual(x, Number.POSITIVE_INFINITY) ** 2) / 2;
    expect(tail(10)).toBeCloseTo(Math.log(7.619853024160527e-24), 5);
    expect(tail(9.999999) - tail(10.000001)).toBeCloseTo(2e-6 * 10.098, 5);
    expect(-tail(20) / Math.LN10).toBeCloseTo(88.5601, 4);
    expect(-tail(30) / Math.LN10).toBeCloseTo(197.30921, 4);
  });

  it("stays finite and in order far out, and is odd", () => {
    let last = 0;
    for (const low of [1, 5, 9, 11, 30, 300]) {
      const residual = censoredResidual(low, low + 2);
      expect(residual).toBeGreaterThan(last);
      expect(residual).toBeLessThan(low + 2);
      expect(censoredResidual(-low - 2, -low)).toBeCloseTo(-residual, 8);
      last = residual;
    }
    expect(censoredResidual(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)).toBe(0);
  });
});
