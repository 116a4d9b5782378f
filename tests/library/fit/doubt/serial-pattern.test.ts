import { curves, fitCurve, serialPattern } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8];
const fit = fitCurve(curves.line, { x, y: [1.3, 1.8, 3.4, 3.7, 5.2, 5.9, 7.3, 7.6] });

describe("serialPattern", () => {
  it("counts steps and runs by hand", () => {
    const { durbinWatson, runs, expectedRuns, pValue } = serialPattern(fit);
    const e = fit.residuals;
    const total = e.reduce((sum, value) => sum + value * value, 0);
    const steps = e.slice(1).reduce((sum, value, i) => sum + (value - e[i]) ** 2, 0);
    expect(durbinWatson).toBeCloseTo(steps / total, 12);
    const signs = e.map(Math.sign);
    const above = signs.filter((sign) => sign > 0).length;
    const below = 8 - above;
    expect(runs).toBe(1 + signs.slice(1).filter((sign, i) => sign !== signs[i]).length);
    expect(expectedRuns).toBeCloseTo(1 + (2 * above * below) / 8, 12);
    expect(pValue).toBeGreaterThan(0);
    expect(pValue).toBeLessThanOrEqual(1);
  });
  it("follows the order that it is given: that of the data backwards, and one that sorts the residuals", () => {
    expect(serialPattern(fit, x.toReversed()).durbinWatson).toBeCloseTo(serialPattern(fit).durbinWatson, 12);
    const sorted = serialPattern(fit, fit.residuals);
    expect(sorted.runs).toBe(2);
    expect(sorted.durbinWatson).toBeLessThan(0.6);
    expect(sorted.reading).toContain("neighbours are alike");
  });
  it("refuses an order of another length, and residuals that are all zero", () => {
    expect(() => serialPattern(fit, [1, 2])).toThrow("must hold one number for each of the 8 points, got 2");
    expect(() => serialPattern({ ...fit, residuals: x.map(() => 0) })).toThrow("must not all be zero");
    expect(() => serialPattern({ ...fit, residuals: x.map(() => 1) })).toThrow("both sides of the curve, got [8,0]");
  });
});
