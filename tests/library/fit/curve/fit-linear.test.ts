import { fitLinear, fitPolynomial, predictLinear, predictPolynomial } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);

describe("fitLinear and fitPolynomial", () => {
  it("words become columns against the first word", () => {
    const kitchen = ["north", "south", "north", "south", "east", "east", "north", "east"];
    const y = kitchen.map((name, i) => ({ north: 10, south: 12, east: 9 })[name]! + 0.01 * (i % 3));
    const linear = fitLinear({ covariates: { kitchen, day: [1, 2, 3, 4, 5, 6, 7, 9] }, y });
    expect(linear.names).toEqual(["intercept", "day", "kitchen[south]", "kitchen[east]"]);
    expect(linear.parameters["kitchen[south]"].estimate).toBeCloseTo(2, 1);
    expect(predictLinear(linear, { kitchen: "east", day: 12 }).extrapolated).toBe(true);
    expect(() => predictLinear(linear, { kitchen: "west", day: 2 })).toThrow(
      "kitchen must be one of north, south, east",
    );
    expect(() => predictLinear(linear, { kitchen: "east" })).toThrow("day must be a finite number");
  });
  it("refuse dependent columns, too few points, too few x", () => {
    expect(() => fitLinear({ covariates: { x, twice: x.map((v) => 2 * v + 1) }, y: straight })).toThrow(
      "follows from the rest: leave it out",
    );
    expect(() => fitLinear({ covariates: { x: [1, 2] }, y: [1, 2] })).toThrow(
      "more observations than the 2 coefficients",
    );
    expect(() => fitPolynomial({ x: [1, 1, 2, 2], y: [1, 2, 3, 4], degree: 2 })).toThrow(
      "at least 3 different values for degree 2",
    );
    expect(() => fitPolynomial({ x, y: straight, degree: 0 })).toThrow("degree must be a whole number >= 1");
  });
  it("weights of 2 equal a doubled row in the estimates", () => {
    const weighted = fitLinear({ covariates: { x }, y: straight, weights: x.map((_, i) => (i === 3 ? 2 : 1)) });
    const doubled = fitLinear({ covariates: { x: [...x, x[3]] }, y: [...straight, straight[3]] });
    expect(weighted.parameters.x.estimate).toBeCloseTo(doubled.parameters.x.estimate, 11);
    expect(weighted.parameters.intercept.estimate).toBeCloseTo(doubled.parameters.intercept.estimate, 11);
  });
  it("a polynomial predicts its own fitted values, and far x as extrapolated", () => {
    const polynomial = fitPolynomial({ x, y: straight, degree: 3 });
    x.forEach((v, i) => {
      expect(predictPolynomial(polynomial, v).value).toBeCloseTo(polynomial.fitted[i], 10);
    });
    expect(predictPolynomial(polynomial, 13).extrapolated).toBe(true);
  });
  it("through zero, finds the slope of trials at one repeated x, by hand", () => {
    const y = [8.2, 7.9, 8.1, 7.8];
    const fit = fitLinear({ covariates: { x: [4, 4, 4, 4] }, y, intercept: false });
    // b = mean(y)/4 and its standard error s/(4 √4), s² = (0.04 + 0.01 + 0.01 + 0.04)/3
    expect(fit.parameters.x.estimate).toBeCloseTo(2, 12);
    expect(fit.parameters.x.standardError).toBeCloseTo(Math.sqrt(0.1 / 3) / 8, 12);
    expect(fit.degreesOfFreedom).toBe(3);
    expect(predictLinear(fit, { x: 4 }).value).toBeCloseTo(8, 12);
    expect(predictLinear(fit, { x: 4 }).extrapolated).toBe(false);
    expect(predictLinear(fit, { x: 5 }).extrapolated).toBe(true);
  });
  it("through zero, takes equal y where x varies, and a repeated x beside one that varies", () => {
    // b = Σxy/Σx² = 8·12/50
    expect(
      fitLinear({ covariates: { x: [3, 4, 5] }, y: [8, 8, 8], intercept: false }).parameters.x.estimate,
    ).toBeCloseTo(96 / 50, 12);
    const both = fitLinear({ covariates: { one: x.map(() => 1), x }, y: straight, intercept: false });
    const plain = fitLinear({ covariates: { x }, y: straight });
    expect(both.parameters.one.estimate).toBeCloseTo(plain.parameters.intercept.estimate, 11);
    expect(both.parameters.one.standardError).toBeCloseTo(plain.parameters.intercept.standardError ?? 0, 11);
  });
  it("refuses weights that are no weights, and columns of another length", () => {
    const weighted = (weight: number) => () =>
      fitLinear({ covariates: { x }, y: straight, weights: x.map((_, i) => (i === 2 ? weight : 1)) });
    for (const weight of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(weighted(weight), String(weight)).toThrow("weights[2] must be > 0; to leave a point out");
    expect(() => fitLinear({ covariates: { x }, y: straight, weights: [1, 2] })).toThrow("must be equally long");
    expect(() => fitLinear({ covariates: { x }, y: straight.map((v, i) => (i === 1 ? Number.NaN : v)) })).toThrow(
      "y[1] must be a finite number",
    );
  });
  it("tells by its condition number how nearly columns depend on each other, by hand", () => {
    // two columns whose correlation is r: √((1 + r)/(1 − r))
    const of = (one: number[], other: number[], y: number[]) => fitLinear({ covariates: { one, other }, y });
    const apart = of([1, 2, 3, 4, 5], [2, -1, -2, -1, 2], [1, 3, 2, 5, 4]);
    expect(apart.conditionNumber).toBeCloseTo(1, 9);
    // 1, 2, 3, 4 and 1, 2, 3, 8 about their means: r = 11/√(5·29)
    const r = 11 / Math.sqrt(5 * 29);
    const near = of([1, 2, 3, 4], [1, 2, 3, 8], [1, 3, 2, 5]);
    expect(near.conditionNumber).toBeCloseTo(Math.sqrt((1 + r) / (1 - r)), 9);
    expect(near.notices).toEqual([]);
    const through = fitLinear({
      covariates: { one: [1, 1, 1, 1], x: [1, 2, 3, 4] },
      y: [1, 3, 2, 5],
      intercept: false,
    });
    const cosine = 10 / Math.sqrt(4 * 30);
    expect(through.conditionNumber).toBeCloseTo(Math.sqrt((1 + cosine) / (1 - cosine)), 9);
    const nudge = x.map((v, i) => v + 1e-6 * noise[i]);
    expect(fitLinear({ covariates: { x, nudge }, y: straight }).notices[0]).toContain("nearly depend on each other");
  });
  it("keeps its digits where the numbers are large and differ little (Wampler's and Longley's trouble)", () => {
    const offset = 1e8;
    const far = fitLinear({ covariates: { x: x.map((v) => v + offset) }, y: straight.map((v) => v + offset) });
    const near = fitLinear({ covariates: { x }, y: straight });
    expect(far.parameters.x.estimate).toBeCloseTo(near.parameters.x.estimate, 7);
    expect(far.rSquared).toBeCloseTo(near.rSquared, 7);
  });
  it("weighs rows of a polynomial, and gives residuals in the unit of y", () => {
    const weights = x.map((_, i) => (i % 3 === 0 ? 4 : 1));
    const fit = fitPolynomial({ x, y: straight, degree: 2, weights });
    straight.forEach((value, i) => {
      expect(fit.residuals[i]).toBeCloseTo(value - predictPolynomial(fit, x[i]).value, 10);
    });
    const rows = x.flatMap((value, i) => Array.from({ length: weights[i] }, () => [value, straight[i]]));
    const repeated = fitPolynomial({ x: rows.map(([v]) => v), y: rows.map(([, v]) => v), degree: 2 });
    expect(fit.parameters.b2.estimate).toBeCloseTo(repeated.parameters.b2.estimate, 11);
    expect(fit.rss).toBeCloseTo(repeated.rss, 10);
  });
  it("refuses what no slope through zero can be told from, and a repeated x beside a constant", () => {
    const through = (given: number[], y: number[]) => () =>
      fitLinear({ covariates: { x: given }, y, intercept: false });
    expect(through([0, 0, 0], [1, 2, 3])).toThrow(
      "x must not be 0 throughout: log trials at another x, or leave it out",
    );
    expect(through([4, 4, 4], [8, 8, 8])).toThrow("y must vary: all 3 values are equal");
    expect(through([3, 4, 5], [0, 0, 0])).toThrow("y must vary: all 3 values are equal");
    expect(() => fitLinear({ covariates: { x: [4, 4, 4, 4] }, y: [8, 7, 9, 8] })).toThrow(
      "x must vary: log trials at a second value of x",
    );
  });
});
