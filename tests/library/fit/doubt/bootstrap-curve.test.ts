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
  it("takes its intervals and moments from the draws themselves", () => {
    const boot = bootstrapCurve(curves.line, fit, { seed: 9, resamples: 200, at: [3, 30] });
    (["a", "b"] as const).forEach((name, j) => {
      const values = boot.draws.map((draw) => draw[j]).toSorted((one, other) => one - other);
      const mean = values.reduce((sum, value) => sum + value, 0) / 200;
      const { interval95, standardError, bias } = boot.parameters[name];
      // 2.5 % of 200 draws: between the 5th and the 6th, by numpy's and R's usual rule (type 7)
      expect(interval95[0]).toBeCloseTo(values[4] + 0.975 * (values[5] - values[4]), 12);
      expect(interval95[1]).toBeCloseTo(values[194] + 0.025 * (values[195] - values[194]), 12);
      expect(bias).toBeCloseTo(mean - fit.parameters[name].estimate, 12);
      expect(standardError ** 2).toBeCloseTo(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 199, 12);
    });
    boot.curve.forEach(({ x: at, interval95 }) => {
      const values = boot.draws.map(([a, b]) => a + b * at).toSorted((one, other) => one - other);
      expect(interval95[0]).toBeCloseTo(values[4] + 0.975 * (values[5] - values[4]), 12);
      expect(interval95[1]).toBeCloseTo(values[194] + 0.025 * (values[195] - values[194]), 12);
    });
  });
});
