import { curves, deltaMethod, fitCurve } from "slabwright/fit";
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
});
