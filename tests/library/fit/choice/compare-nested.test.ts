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
  it("tells two extra terms together, and says which way it went", () => {
    const bent = x.map((v, i) => 2 + 0.1 * v * v + noise[i]);
    const line = fitCurve(curves.line, { x, y: bent });
    const cubic = fitCurve(curves.polynomial(3), { x, y: bent });
    const test = compareNested(line, cubic);
    expect([test.numeratorDf, test.denominatorDf]).toEqual([2, 8]);
    expect(test.f).toBeCloseTo((line.rss - cubic.rss) / 2 / (cubic.rss / 8), 10);
    expect(test.reading).toMatch(/^F\(2, 8\) = .*: the 2 extra terms are supported by these 12 trials\.$/);
    expect(compareNested(fit, fitCurve(curves.polynomial(2), { x, y: straight })).reading).toContain(
      "the extra term is",
    );
  });
  it("refuses other points, and a wide form that fits less closely", () => {
    const fewer = fitCurve(curves.polynomial(2), { x: x.slice(1), y: straight.slice(1) });
    expect(() => compareNested(fit, fewer)).toThrow("must rest on the same points, got [12,11]");
    const worse = { ...fitCurve(curves.polynomial(2), { x, y: straight }), rss: 1.01 * fit.rss };
    expect(() => compareNested(fit, worse)).toThrow("must fit at least as closely as narrow");
    // as close within rounding is as close
    expect(compareNested(fit, { ...worse, rss: fit.rss * (1 + 1e-10) }).f).toBe(0);
  });
});
