import { compareFits, curves, fitCensoredTimes, fitCurve, fitLinear, influence } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);
const fit = fitCurve(curves.line, { x, y: straight });

describe("influence and compareFits", () => {
  it("left-out errors are residual over 1 - leverage for a straight line", () => {
    const { points, leaveOneOutError } = influence(curves.line, fit);
    for (const point of points) expect(point.leftOutError).toBeCloseTo(point.residual / (1 - point.leverage), 7);
    const row = compareFits({ line: fit }).rows[0];
    expect(row.leaveOneOutError).toBeCloseTo(leaveOneOutError, 7);
    expect(fitLinear({ covariates: { x }, y: straight }).press / 12).toBeCloseTo(leaveOneOutError ** 2, 7);
  });
  it("points at the trial that decides a fit", () => {
    const far = fitCurve(curves.line, { x: [1, 2, 3, 4, 20], y: [1, 2.1, 2.9, 4.1, 9] });
    expect(influence(curves.line, far).reading).toMatch(/^Point 5 \(x = 20\) decides much of the fit/);
    const { points, reading } = influence(curves.line, fit);
    const most = points.toSorted((one, other) => other.cooksDistance - one.cooksDistance)[0];
    expect(reading).toBe(
      `No point decides the fit: the largest Cook's distance is ${most.cooksDistance.toPrecision(2)} (point ${most.index + 1}, x = ${x[most.index]}).`,
    );
  });
  it("refuses fits of different data and none at all", () => {
    const other = fitCurve(curves.line, { x: x.slice(1), y: straight.slice(1) });
    expect(() => compareFits({ fit, other })).toThrow("must rest on the same observations");
    expect(() => compareFits({})).toThrow("at least one fit");
  });
});

describe("compareFits of times seen at checks", () => {
  it("ranks distributions by AICc, with no residual sd to show", () => {
    const checks = { lower: [8, 8, 10, 10, 12, 8, 10, 6], upper: [10, 10, 12, 12, 14, 10, 12, 8] };
    const logLogistic = fitCensoredTimes(checks);
    const weibull = fitCensoredTimes({ ...checks, distribution: "weibull" });
    const comparison = compareFits({ logLogistic, weibull });
    expect(comparison.rows[0].aicc).toBe(Math.min(logLogistic.aicc, weibull.aicc));
    expect(comparison.rows[0].residualSd).toBeNull();
    expect(() =>
      compareFits({ logLogistic, line: fitCurve(curves.line, { x: x.slice(4), y: straight.slice(4) }) }),
    ).toThrow("must be of one kind");
  });
});
