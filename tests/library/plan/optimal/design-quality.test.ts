import { fitLinear, predictLinear } from "slabwright/fit";
import { designQuality, fullFactorial, polynomialTerms, termsModel } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const model = termsModel({ factors: ["a", "b"], terms: polynomialTerms(["a", "b"], "interactions") });
const cube = fullFactorial({ levels: [2, 2] });

describe("designQuality", () => {
  it("of an orthogonal plan, by hand: XᵀX = 4 I", () => {
    const quality = designQuality({
      points: cube,
      model,
      region: [
        [0, 0],
        [1, 1],
      ],
    });
    expect(quality.runs).toBe(4);
    expect(quality.determinant).toBeCloseTo(256, 9);
    expect(quality.logDeterminant).toBeCloseTo(Math.log(256), 12);
    expect(quality.dEfficiency).toBeCloseTo(100, 10);
    expect(quality.averageVariance).toBeCloseTo((0.25 + 1) / 2, 12);
    expect(quality.largestVariance).toBeCloseTo(1, 12);
    for (const term of model.terms) expect(quality.standardErrors[term]).toBeCloseTo(0.5, 12);
  });

  it("tells the standard errors that a fit of such runs has, in units of its scatter", () => {
    const points = [
      [-1, -1],
      [1, -0.5],
      [-0.2, 1],
      [1, 1],
      [0.3, 0],
      [0, -1],
    ];
    const linear = termsModel({ factors: ["a", "b"], terms: ["1", "a", "b"] });
    const quality = designQuality({ points, model: linear, region: [[0.5, 0.5]] });
    const fit = fitLinear({
      covariates: { a: points.map(([a]) => a), b: points.map(([, b]) => b) },
      y: [3.1, 2.2, 4.8, 5.3, 3.4, 2.9],
    });
    expect(quality.standardErrors.a * fit.residualSd).toBeCloseTo(fit.parameters.a.standardError!, 10);
    const { standardError } = predictLinear(fit, { a: 0.5, b: 0.5 });
    expect(Math.sqrt(quality.averageVariance) * fit.residualSd).toBeCloseTo(standardError, 10);
  });

  it("refuses runs that cannot tell the terms apart", () => {
    expect(() => designQuality({ points: cube.slice(1), model, region: cube })).toThrow(
      "must be at least 4 runs for the 4 terms: add runs or leave terms out, got 3",
    );
    const flat = [
      [1, -1],
      [1, 0],
      [1, 1],
      [1, 0.5],
    ];
    expect(() => designQuality({ points: flat, model, region: cube })).toThrow(
      'must tell "a" from the terms before it',
    );
    expect(() => designQuality({ points: cube, model, region: [] })).toThrow("region must hold at least one point");
  });
});
