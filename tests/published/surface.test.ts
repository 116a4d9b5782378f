import { againstStationary, canonicalAnalysis, fitSurface, lackOfFit, ridgePath, surfaceAt } from "slabwright/fit";
import { centralComposite } from "slabwright/plan";
import { describe, expect, it } from "vitest";
import { comparison } from "./comparison";
import surfaces from "./surface/surfaces.json";

const inR = comparison({
  page: "next-trial",
  what: "coefficients, stationary point, bends and their standard errors of `fitSurface` and `canonicalAnalysis`",
  against: "R's lm and eigen on two published plans",
  source: "Lenth R.V. (2009), Journal of Statistical Software 32(7); R Core Team, R 4.2.2",
});
const factors = ["x1", "x2"];

/**
 * Two published central composites in two blocks, each refitted by R 4.2.2 with `surface/surfaces.R` (twelve digits stored), which
 * holds their sources: a reaction's yield by time and temperature, and the appeal of cakes by baking time and temperature.
 */
describe.each(Object.entries(surfaces))("%s, a central composite in two blocks, as R 4.2.2 has it", (_, set) => {
  const points = set.x1.map((x, at) => [x, set.x2[at]]);
  const fit = fitSurface({ factors, points, y: set.y, blocks: set.block });
  const names = ["intercept", "x1", "x2", "x1*x2", "x1^2", "x2^2", `block[${set.block[13]}]`];

  it("coefficients and standard errors", () => {
    names.forEach((name, at) => {
      inR.absolute(fit.parameters[name].estimate, set.coef[at], 0.5e-10, "-");
      inR.absolute(fit.parameters[name].standardError ?? Number.NaN, set.se[at], 0.5e-10, "-");
    });
    expect(fit.degreesOfFreedom).toBe(set.df);
  });

  it("lack of fit against trials repeated within a block", () => {
    const { f, pValue, pureErrorDf } = lackOfFit(fit);
    expect(f / set.lackOfFitF).toBeCloseTo(1, 8);
    expect(pValue).toBeCloseTo(set.lackOfFitP, 9);
    expect(pureErrorDf).toBe(set.pureDf);
  });

  it("stationary point, height, bends and their standard errors", () => {
    const { stationary, height, axes } = canonicalAnalysis(fit);
    stationary.forEach((value, at) => {
      inR.absolute(value, set.stationary[at], 0.5e-9, "-");
    });
    expect(height.value).toBeCloseTo(set.height, 9);
    inR.absolute(height.standardError, set.heightSe, 0.5e-9, "-");
    axes.forEach(({ bend, standardError }, at) => {
      inR.absolute(bend, set.eigen[at], 0.5e-10, "-");
      inR.absolute(standardError, set.eigenSe[at], 0.5e-9, "-");
    });
  });

  it("slopes at the middle against none, and the ridge at radius 1", () => {
    expect(againstStationary(fit, [0, 0]).statistic / set.againstMiddle).toBeCloseTo(1, 9);
    const [ridge] = ridgePath({ fit, radii: [1] });
    ridge.point.forEach((value, at) => {
      expect(value).toBeCloseTo(set.ridge1[at], 6);
    });
  });
});

/**
 * As printed by the documentation of R's package rsm, after Lenth (2009), Journal of Statistical Software 32(7): the same reaction, and
 * a paper helicopter's flight time (Box, Hunter & Hunter 2005, table 12.5).
 */
describe("printed analyses", () => {
  it("the reaction: stationary point 0.3722954, 0.3343802; bends -0.9233027, -1.3186949; F 0.5307, p 0.6851", () => {
    const set = surfaces.chemreact;
    const points = set.x1.map((x, at) => [x, set.x2[at]]);
    const fit = fitSurface({ factors, points, y: set.y, blocks: set.block });
    const { stationary, axes, kind } = canonicalAnalysis(fit);
    expect(stationary.map((value) => value.toFixed(7))).toEqual(["0.3722954", "0.3343802"]);
    expect(axes.map(({ bend }) => bend.toFixed(7))).toEqual(["-0.9233027", "-1.3186949"]);
    expect(kind).toBe("highest");
    const { f, pValue } = lackOfFit(fit);
    expect([f.toFixed(4), pValue.toFixed(4)]).toEqual(["0.5307", "0.6851"]);
  });

  it("its first seven runs: steepest ascent 0.407, 0.291 at 0.5, and 83.352 there", () => {
    const set = surfaces.chemreact;
    const points = set.x1.slice(0, 7).map((x, at) => [x, set.x2[at]]);
    const fit = fitSurface({ factors, points, y: set.y.slice(0, 7), form: "linear" });
    const ridge = ridgePath({ fit, radii: [0, 0.5, 1] });
    expect(ridge.map(({ point }) => point.map((value) => value.toFixed(3)))).toEqual([
      ["0.000", "0.000"],
      ["0.407", "0.291"],
      ["0.814", "0.581"],
    ]);
    expect(ridge.map(({ value }) => value.toFixed(3))).toEqual(["82.814", "83.352", "83.890"]);
  });

  it("the helicopter, from its printed coefficients: a saddle at 0.8607, -0.3307, -0.8395, -0.1161", () => {
    const [x1, x2, x3, x4] = [-0.083333, 5.083333, 0.25, -6.083333];
    const twists = [-2.875, -3.75, 4.375, 4.625, -1.5, -2.125];
    const squares = [-2.0375, -1.6625, -2.5375, -0.1625];
    const { points } = centralComposite({ factors: 4, centres: [4, 2] });
    const y = points.map(([a, b, c, d]) => {
      const pairs = [a * b, a * c, a * d, b * c, b * d, c * d];
      const bent = [a, b, c, d].reduce((sum, x, at) => sum + squares[at] * x * x, 0);
      return 372.8 + x1 * a + x2 * b + x3 * c + x4 * d + pairs.reduce((sum, x, at) => sum + twists[at] * x, 0) + bent;
    });
    const fit = fitSurface({ factors: ["A", "R", "W", "L"], points, y });
    const { stationary, axes, kind } = canonicalAnalysis(fit);
    expect(kind).toBe("saddle");
    [0.8607107, -0.3307115, -0.8394866, -0.1161465].forEach((value, at) => {
      expect(stationary[at]).toBeCloseTo(value, 5);
    });
    [3.258222, -1.198324, -3.807935, -4.651963].forEach((value, at) => {
      expect(axes[at].bend).toBeCloseTo(value, 5);
    });
    // up to its sign: the ridge that rises from the saddle
    [0.5177048, -0.4504231, -0.4517232, 0.5701289].forEach((value, at) => {
      expect(axes[0].direction[at]).toBeCloseTo(value, 5);
    });
    expect(surfaceAt(fit, stationary).value).toBeCloseTo(372.172, 2);
  });
});

/** Yields of a made-up process over a rotatable plan with five centres; R 4.2.2, lm and eigen, ten digits. */
describe("a central composite of two factors with five centres, as R 4.2.2 has it", () => {
  const set = {
    y: [76.5, 77, 78, 79.5, 75.6, 78.4, 77, 78.5, 79.9, 80.3, 80, 79.7, 79.8],
    coef: [79.94, 0.7449747468, 0.7651650429, -1.37625, -1.00125, 0.25],
    se: [0.2010352257, 0.1589323008, 0.1589323008, 0.1704359049, 0.1704359049, 0.2247642153],
    stationary: [0.3088613393, 0.4206643584],
    height: 80.21598578,
    bends: [-0.9634030453, -1.414096955],
    lackOfFitF: 7.563085969,
    lackOfFitP: 0.03994911318,
  };
  const r2 = Math.SQRT2;
  const points = [
    [-1, -1],
    [1, -1],
    [-1, 1],
    [1, 1],
    [-r2, 0],
    [r2, 0],
    [0, -r2],
    [0, r2],
    ...Array.from({ length: 5 }, () => [0, 0]),
  ];
  const fit = fitSurface({ factors, points, y: set.y });

  it("coefficients, standard errors, stationary point, bends, lack of fit", () => {
    ["intercept", "x1", "x2", "x1^2", "x2^2", "x1*x2"].forEach((name, at) => {
      expect(fit.parameters[name].estimate).toBeCloseTo(set.coef[at], 8);
      expect(fit.parameters[name].standardError).toBeCloseTo(set.se[at], 8);
    });
    const { stationary, height, axes } = canonicalAnalysis(fit);
    stationary.forEach((value, at) => {
      expect(value).toBeCloseTo(set.stationary[at], 8);
    });
    expect(height.value).toBeCloseTo(set.height, 7);
    axes.forEach(({ bend }, at) => {
      expect(bend).toBeCloseTo(set.bends[at], 8);
    });
    const test = lackOfFit(fit);
    expect(test.f).toBeCloseTo(set.lackOfFitF, 7);
    expect(test.pValue).toBeCloseTo(set.lackOfFitP, 8);
  });
});
