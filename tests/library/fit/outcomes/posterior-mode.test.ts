import { posteriorMode } from "slabwright/fit";
import { describe, expect, it } from "vitest";

describe("posteriorMode", () => {
  it("is the precision-weighted mean of prior and data, as conjugate theory has it", () => {
    const fit = posteriorMode({
      parameters: { h: 10 },
      priors: { h: { mean: 40, sd: 10 } },
      residuals: ({ h }) => [50, 54, 46].map((seen) => (seen - h) / 6),
    });
    const precision = 1 / 100 + 3 / 36;
    expect(fit.parameters.h.estimate).toBeCloseTo((40 / 100 + 150 / 36) / precision, 8);
    expect(fit.parameters.h.standardError).toBeCloseTo(1 / Math.sqrt(precision), 8);
    expect(fit.dataShare.h).toBeCloseTo(1 - 1 / precision / 100, 8);
  });
  it("returns the prior, data share 0, for a parameter the data do not touch", () => {
    const fit = posteriorMode({
      parameters: { h: 30, k: 1 },
      priors: { h: { mean: 40, sd: 10 }, k: { mean: 3, sd: 0.5 } },
      residuals: ({ h }) => [(50 - h) / 5],
    });
    expect(fit.parameters.k.estimate).toBeCloseTo(3, 9);
    expect(fit.parameters.k.standardError).toBeCloseTo(0.5, 9);
    expect(fit.dataShare.k).toBeCloseTo(0, 9);
  });
});
