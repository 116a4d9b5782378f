import { leastSquares } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6];
const y = [2.3, 3.9, 6.2, 7.8, 10.4, 11.9];
const line = ({ a, b }: { a: number; b: number }): number[] => x.map((xi, i) => y[i] - a - b * xi);

describe("leastSquares, by levenbergMarquardt and summariseFit", () => {
  it("takes analytic derivatives and gives the same answer as without", () => {
    const plain = leastSquares({ parameters: { a: 0, b: 1 }, residuals: line });
    const exact = leastSquares({
      parameters: { a: 0, b: 1 },
      residuals: line,
      jacobian: () => [x.map(() => -1), x.map((xi) => -xi)],
    });
    expect(exact.parameters.b.estimate).toBeCloseTo(plain.parameters.b.estimate, 10);
    expect(exact.parameters.b.standardError).toBeCloseTo(plain.parameters.b.standardError ?? 0, 10);
  });
  it("holds fixed parameters and stays inside bounds", () => {
    const fixed = leastSquares({ parameters: { a: { start: 0.5, fixed: true }, b: 1 }, residuals: line });
    expect(fixed.parameters.a).toMatchObject({ estimate: 0.5, fixed: true, standardError: null });
    expect(fixed.degreesOfFreedom).toBe(5);
    const bounded = leastSquares({ parameters: { a: 0, b: { start: 1, upper: 1.5 } }, residuals: line });
    expect(bounded.parameters.b).toMatchObject({ estimate: 1.5, atBound: "upper", standardError: null });
    expect(bounded.notices[0]).toContain("b rests at its upper bound 1.5");
    // with b held at 1.5 the best a is the mean of y - 1.5 x
    expect(bounded.parameters.a.estimate).toBeCloseTo(y.reduce((sum, yi, i) => sum + yi - 1.5 * x[i], 0) / 6, 8);
  });
  it("leaves a bound that it was started at when the data say so", () => {
    const fit = leastSquares({ parameters: { a: { start: 0, lower: 0 }, b: { start: 0, lower: 0 } }, residuals: line });
    expect(fit.parameters.b.atBound).toBeNull();
    expect(fit.parameters.b.estimate).toBeCloseTo(1.974285714, 8); // R 4.2.2: lm(y ~ x)
  });
  it("searches a log-scale parameter over six powers of ten and keeps it above zero", () => {
    const times = [0, 2, 4, 8, 16];
    const heat = times.map((t) => 200 * Math.exp(-0.13 * t));
    const fit = leastSquares({
      parameters: { k: { start: 1e-5, scale: "log" } },
      residuals: ({ k }) => times.map((t, i) => heat[i] + 0.1 * Math.cos(i) - 200 * Math.exp(-k * t)),
    });
    expect(fit.parameters.k.estimate).toBeCloseTo(0.13, 3);
    expect(fit.parameters.k.interval95?.[0]).toBeGreaterThan(0);
  });
  it("names the parameters that the data cannot tell apart, and gives them no standard error", () => {
    const fit = leastSquares({
      parameters: { a: 1, b: 1, c: 1 },
      residuals: ({ a, b, c }) => x.map((xi, i) => y[i] - a - (b + c) * xi),
    });
    expect(fit.converged).toBe(false);
    expect(fit.parameters.a.standardError).not.toBeNull();
    expect(fit.parameters.b.standardError).toBeNull();
    expect(fit.parameters.c.standardError).toBeNull();
    expect(fit.notices.join(" ")).toMatch(/leave (b, c|c, b) undetermined/);
  });
  it("joins data of two kinds when each is divided by its known sd", () => {
    const fit = leastSquares({
      parameters: { h: 30 },
      sdKnown: true,
      residuals: ({ h }) => [(41 - h) / 2, (80 - 2 * h) / 2, (43 - h) / 4],
    });
    // weighted mean of 41 (sd 2), 40 (sd 1), 43 (sd 4), worked by hand
    const precision = 1 / 4 + 1 + 1 / 16;
    expect(fit.parameters.h.estimate).toBeCloseTo((41 / 4 + 40 + 43 / 16) / precision, 9);
    expect(fit.parameters.h.standardError).toBeCloseTo(1 / Math.sqrt(precision), 9);
    expect(fit.parameters.h.interval95?.[1]).toBeCloseTo(
      fit.parameters.h.estimate + 1.959963985 / Math.sqrt(precision),
      7,
    );
  });
  it("says why it stopped", () => {
    const stopped = leastSquares({
      parameters: { a: 1, b: 1 },
      residuals: ({ a, b }) => x.map((xi, i) => y[i] - a * Math.exp(b * xi)),
      maxIterations: 1,
    });
    expect(stopped.converged).toBe(false);
    expect(stopped.reason).toContain("stopped after 1 steps");
    expect(stopped.notices[0]).toContain("did not converge");
  });
  it("takes derivatives by name though some parameters are fixed, and on the logarithm where one is searched there", () => {
    const jacobian = () => [x.map(() => -1), x.map(() => -1), x.map((xi) => -xi)];
    const fit = leastSquares({
      parameters: { fixed: { start: 0.5, fixed: true }, a: 0, c: { start: 1, scale: "log" } },
      residuals: ({ fixed, a, c }) => x.map((xi, i) => y[i] - fixed - a - c * xi),
      jacobian,
    });
    const plain = leastSquares({ parameters: { a: 0, b: 1 }, residuals: line });
    expect(fit.parameters.c.estimate).toBeCloseTo(plain.parameters.b.estimate, 9);
    expect(fit.parameters.a.estimate).toBeCloseTo(plain.parameters.a.estimate - 0.5, 9);
    expect(fit.parameters.c.standardError).toBeCloseTo(plain.parameters.b.standardError ?? 0, 9);
  });
  it("keeps bounds on a logarithm, and takes one at zero or below for none", () => {
    const log = (bounds: { lower?: number; upper?: number }) =>
      leastSquares({ parameters: { a: 0, b: { start: 1, scale: "log", ...bounds } }, residuals: line }).parameters.b;
    expect(log({ lower: 0 }).estimate).toBeCloseTo(1.974285714, 7);
    expect(log({ lower: -3, upper: 50 }).estimate).toBeCloseTo(1.974285714, 7);
    expect(log({ upper: 1.5 }).atBound).toBe("upper");
    expect(log({ upper: 1.5 }).estimate).toBeCloseTo(1.5, 12);
    expect(
      leastSquares({ parameters: { a: 0, b: { start: 4, scale: "log", lower: 3 } }, residuals: line }).parameters.b
        .atBound,
    ).toBe("lower");
    expect(() => leastSquares({ parameters: { b: { start: 0, scale: "log" } }, residuals: () => [1, 2] })).toThrow(
      "start of b must be > 0 on a log scale, got 0",
    );
    expect(() => leastSquares({ parameters: { b: Number.NaN }, residuals: () => [1, 2] })).toThrow(
      "start of b must be a finite number, got NaN",
    );
  });
  it("refuses residuals that change their number", () => {
    let calls = 0;
    const residuals = ({ b }: { b: number }): number[] => x.slice(0, calls++ < 2 ? 6 : 5).map((xi, i) => y[i] - b * xi);
    expect(() => leastSquares({ parameters: { b: 1 }, residuals })).toThrow(
      "residuals must keep their number, 6, got 5",
    );
  });
  it("refuses too few residuals, a start that is not finite, bounds the wrong way round", () => {
    expect(() => leastSquares({ parameters: { a: 1, b: 1 }, residuals: () => [1, 2] })).toThrow(
      "must number more than the 2 free parameters",
    );
    expect(() => leastSquares({ parameters: { a: 1 }, residuals: ({ a }) => [Math.log(-a), 1, 2] })).toThrow(
      "residual 0 must be finite at the start",
    );
    expect(() =>
      leastSquares({ parameters: { a: { start: 1, lower: 2, upper: 0 } }, residuals: ({ a }) => [a, a - 1] }),
    ).toThrow("must have lower <= upper");
    expect(() => leastSquares({ parameters: {}, residuals: () => [1] })).toThrow("must name at least one parameter");
  });
});

describe("leastSquares on a rough function", () => {
  const rounded =
    (steps: number) =>
    ({ a, b }: { a: number; b: number }) =>
      x.map((xi, i) => Math.round(steps * (y[i] - a - b * xi)) / steps);
  it("says that the model jumps instead of calling the start an answer", () => {
    const fit = leastSquares({ parameters: { a: 0.5, b: 0.7 }, residuals: rounded(1e6) });
    expect(fit.converged).toBe(false);
    expect(fit.reason).toContain("the model jumps or its numbers are noisy; a larger relativeStep may help");
  });
  it("is helped by the larger step that it asks for", () => {
    const fit = leastSquares({ parameters: { a: 0.5, b: 0.7 }, residuals: rounded(1e6), relativeStep: 1e-3 });
    expect(fit.converged).toBe(true);
    // derivatives then carry errors of 1e-6/1e-3, so the end lies within a hundredth of a standard error of R's 1.974285714
    expect(Math.abs(fit.parameters.b.estimate - 1.974285714)).toBeLessThan(
      0.01 * (fit.parameters.b.standardError ?? 0),
    );
  });
});
