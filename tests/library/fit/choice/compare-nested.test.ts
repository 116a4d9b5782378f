import { compareNested, curves, fitCurve } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);
const fit = fitCurve(curves.line, { x, y: straight });

describe("compareNested", () => {
  it("is t squared for one extra term", () => {
    const wide = fitCurve(curves.polynomial(2), { x, y: straight });
    const test = compareNested(fit, wide);
    const t = wide.parameters.b2.estimate / (wide.parameters.b2.standardError ?? 1);
    expect(test.f).toBeCloseTo(t * t, 6);
    expect(test.reading).toContain("not supported by these 12 trials");
  });
  it("refuses forms that do not contain each other", () => {
    const wide = fitCurve(curves.polynomial(2), { x, y: straight });
    expect(() => compareNested(wide, fit)).toThrow("must have more parameters than narrow");
  });
});
