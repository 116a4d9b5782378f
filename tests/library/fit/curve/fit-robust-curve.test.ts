import { curves, fitCurve, fitRobustCurve } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);

describe("fitRobustCurve", () => {
  it("returns the plain fit when nothing is far out, and bisquare shuts out what is", () => {
    const spoiled = straight.map((value, i) => (i === 8 ? value + 30 : value));
    const robust = fitRobustCurve(curves.line, { x, y: spoiled }, { loss: "bisquare" });
    expect(robust.n).toBe(12);
    expect(robust.robustWeights[8]).toBe(0);
    const without = fitCurve(curves.line, { x: x.filter((_, i) => i !== 8), y: straight.filter((_, i) => i !== 8) });
    expect(Math.abs(robust.parameters.b.estimate - without.parameters.b.estimate)).toBeLessThan(0.01);
    expect(Math.abs(robust.plain.parameters.b.estimate - without.parameters.b.estimate)).toBeGreaterThan(0.3);
    expect(robust.converged).toBe(true);
    expect(robust.notices).toEqual([
      "Point 9 (x = 9) was let count only 0.00 of a point: check its record. It has not been removed.",
    ]);
  });

  it("says so where weights and curve chase each other without end", () => {
    const chase = fitRobustCurve(curves.line, { x: [1, 2, 3, 4, 5], y: [17, 16, 15, 20, 1] });
    expect(chase.converged).toBe(false);
    expect(chase.reason).toBe("stopped after 500 rounds of reweighting");
    expect(chase.notices[0]).toBe("The reweighting did not settle in 500 rounds: do not use its numbers.");
  });

  it("counts nobody down where no residual reaches 1.345 of the scale, and keeps weights that it is given", () => {
    // all residuals of one size: the scale is that size over 0.6745
    const even = fitRobustCurve(curves.line, { x: [1, 1, 2, 2, 3, 3], y: [2, 4, 4, 6, 6, 8] });
    expect(even.robustWeights).toEqual([1, 1, 1, 1, 1, 1]);
    expect(even.residualSd).toBeCloseTo(1 / 0.6745, 9);
    expect(even.parameters.b.estimate).toBeCloseTo(2, 9);
    const doubled = fitRobustCurve(curves.line, { x, y: straight, weights: x.map(() => 4) });
    const once = fitRobustCurve(curves.line, { x, y: straight });
    expect(doubled.parameters.b.estimate).toBeCloseTo(once.parameters.b.estimate, 9);
    expect(doubled.parameters.b.standardError).toBeCloseTo(once.parameters.b.standardError!, 9);
    expect(doubled.residualSd).toBeCloseTo(2 * once.residualSd, 9);
    expect(doubled.fitted[3]).toBeCloseTo(once.fitted[3], 9);
  });

  it("refuses a loss it does not know, and points that leave no scale", () => {
    expect(() => fitRobustCurve(curves.line, { x, y: straight }, { loss: "cauchy" as "huber" })).toThrow(
      'loss must be "huber" or "bisquare", got "cauchy"',
    );
    // the plain fit is y = 0, through all points but two that lie as far above as below
    const flat = { x: [1, 2, 3, 3, 3, 4, 5], y: [0, 0, 0, 5, -5, 0, 0] };
    expect(() => fitRobustCurve(curves.line, flat)).toThrow("more than half of the residuals are zero");
  });
});
