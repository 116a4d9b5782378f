import { bootstrapCurve, curves, fitCurve } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);
const fit = fitCurve(curves.line, { x, y: straight });

describe("bootstrapCurve", () => {
  it("agrees with theory for a straight line within the noise of 4000 refits", () => {
    const boot = bootstrapCurve(curves.line, fit, { seed: 4, resamples: 4000, at: [6.5] });
    expect(boot.failed).toBe(0);
    const se = fit.parameters.b.standardError ?? 0;
    // freed residuals have variance s^2 (n - p)/n on average after centring; 4000 draws leave about 1.1 % noise in an sd
    expect(Math.abs(boot.parameters.b.standardError / se - 1)).toBeLessThan(0.08);
    expect(Math.abs(boot.parameters.b.bias)).toBeLessThan(4 * (se / Math.sqrt(4000)));
    expect(boot.curve[0].interval95[0]).toBeLessThan(fit.fitted[5] + 0.45);
  });
  it("repeats itself from the same seed and differs from another", () => {
    const one = bootstrapCurve(curves.line, fit, { seed: 4, resamples: 100 });
    expect(bootstrapCurve(curves.line, fit, { seed: 4, resamples: 100 })).toEqual(one);
    expect(bootstrapCurve(curves.line, fit, { seed: 5, resamples: 100 }).draws).not.toEqual(one.draws);
  });
  it("refuses fewer than 100 refits", () => {
    expect(() => bootstrapCurve(curves.line, fit, { seed: 1, resamples: 10 })).toThrow(
      "resamples must be a whole number >= 100",
    );
  });
});
