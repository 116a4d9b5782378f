import { curves, deltaMethod, fitCurve, leastSquares } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);
const fit = fitCurve(curves.line, { x, y: straight });

describe("deltaMethod", () => {
  it("gives the exact error of a linear quantity", () => {
    const at = deltaMethod(fit, ({ a, b }) => a + 6.5 * b);
    expect(at.value).toBeCloseTo(straight.reduce((sum, value) => sum + value, 0) / 12, 10);
    expect(at.standardError).toBeCloseTo(fit.residualSd / Math.sqrt(12), 8); // at the mean of x
  });
  it("works out nothing from a fit whose data leave a parameter open, or that did not converge", () => {
    const open = leastSquares({
      parameters: { a: 1, b: 1 },
      residuals: ({ a, b }) => x.map((_, i) => straight[i] - a - b),
    });
    expect(() => deltaMethod(open, ({ a }) => a)).toThrow(/deltaMethod: fit must/);
    expect(() => deltaMethod({ ...open, converged: true }, ({ a }) => a)).toThrow("its data leave a undetermined");
    expect(() => deltaMethod({ ...fit, converged: false }, ({ a }) => a)).toThrow("must have converged");
    const held = fitCurve(curves.line, { x, y: straight }, { fixed: { a: 2 } });
    expect(deltaMethod(held, ({ a, b }) => a + b).standardError).toBeCloseTo(held.parameters.b.standardError ?? 0, 8);
    expect(() => deltaMethod(fit, () => Number.NaN)).toThrow("quantity must be finite at the estimates");
  });
});
