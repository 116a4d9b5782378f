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
});
