import {
  bootstrapCurve,
  compareFits,
  compareNested,
  curves,
  deltaMethod,
  fitCurve,
  fitLinear,
  fitPolynomial,
  fitRobustCurve,
  influence,
  lackOfFit,
  predictLinear,
  predictPolynomial,
  profileInterval,
  serialPattern,
} from "slabwright";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);
const fit = fitCurve(curves.line, { x, y: straight });

describe("profileInterval", () => {
  it("is the Wald interval for a straight line", () => {
    const { interval, closed } = profileInterval(curves.line, fit, "b");
    expect(interval[0]).toBeCloseTo(fit.parameters.b.interval95?.[0] ?? 0, 7);
    expect(interval[1]).toBeCloseTo(fit.parameters.b.interval95?.[1] ?? 0, 7);
    expect(closed).toEqual([true, true]);
  });
  it("gives a one-sided interval for a parameter at its bound", () => {
    const bent = fitCurve(curves.slabTime, { x, y: x.map((v, i) => 3 + 4 * Math.sqrt(v) + 0.3 * noise[i]) });
    expect(bent.parameters.b.atBound).toBe("lower");
    const { interval, closed } = profileInterval(curves.slabTime, bent, "b");
    expect(interval[0]).toBe(0);
    expect(interval[1]).toBeGreaterThan(0);
    expect(closed).toEqual([false, true]);
    const at = fitCurve(curves.slabTime, { x, y: bent.y }, { fixed: { b: interval[1] } });
    expect((at.rss - bent.rss) / bent.residualSd ** 2).toBeCloseTo(
      4.964602744 * (9 / 9) + (5.117355029 - 4.964602744),
      5,
    ); // qf(.95, 1, 9)
  });
  it("says where the data set no limit", () => {
    const early = [0.1, 0.2, 0.3, 0.4, 0.5];
    const rising = fitCurve(curves.hyperbola, { x: early, y: [1.01, 1.96, 2.93, 3.79, 4.72] });
    const { interval, closed, reading } = profileInterval(curves.hyperbola, rising, "top", 0.999);
    expect(interval[1]).toBe(Number.POSITIVE_INFINITY);
    expect(closed).toEqual([true, false]);
    expect(reading).toContain("the data set no limit above");
  });
  it("refuses an unknown or a fixed parameter", () => {
    expect(() => profileInterval(curves.line, fit, "c" as "a")).toThrow("parameter must be one of a, b");
    const held = fitCurve(curves.line, { x, y: straight }, { fixed: { a: 2 } });
    expect(() => profileInterval(curves.line, held, "a")).toThrow("must not be one that was fixed");
  });
});

describe("bootstrapCurve", () => {
  it("agrees with theory for a straight line within the noise of 4000 refits", () => {
    const boot = bootstrapCurve(curves.line, fit, { seed: 4, resamples: 4000, at: [6.5] });
    expect(boot.failed).toBe(0);
    const se = fit.parameters.b.standardError ?? 0;
    // freed residuals have variance s^2 (n - p)/n on average after centring; 4000 draws leave about 1.1 % noise in an sd
    expect(Math.abs(boot.parameters.b.standardError / se - 1)).toBeLessThan(0.08);
    expect(Math.abs(boot.parameters.b.bias)).toBeLessThan(4 * (se / Math.sqrt(4000)));
    expect(boot.curve[0].interval95[0]).toBeLessThan(fit.fitted[5] + 0.45);
  });
  it("repeats itself from the same seed and differs from another", () => {
    const one = bootstrapCurve(curves.line, fit, { seed: 4, resamples: 100 });
    expect(bootstrapCurve(curves.line, fit, { seed: 4, resamples: 100 })).toEqual(one);
    expect(bootstrapCurve(curves.line, fit, { seed: 5, resamples: 100 }).draws).not.toEqual(one.draws);
  });
  it("refuses fewer than 100 refits", () => {
    expect(() => bootstrapCurve(curves.line, fit, { seed: 1, resamples: 10 })).toThrow(
      "resamples must be a whole number >= 100",
    );
  });
});

describe("influence and compareFits", () => {
  it("left-out errors are residual over 1 - leverage for a straight line", () => {
    const { points, leaveOneOutError } = influence(curves.line, fit);
    for (const point of points) expect(point.leftOutError).toBeCloseTo(point.residual / (1 - point.leverage), 7);
    const row = compareFits({ line: fit }).rows[0];
    expect(row.leaveOneOutError).toBeCloseTo(leaveOneOutError, 7);
    expect(fitLinear({ covariates: { x }, y: straight }).press / 12).toBeCloseTo(leaveOneOutError ** 2, 7);
  });
  it("points at the trial that decides a fit", () => {
    const far = fitCurve(curves.line, { x: [1, 2, 3, 4, 20], y: [1, 2.1, 2.9, 4.1, 9] });
    expect(influence(curves.line, far).reading).toMatch(/^Point 5 \(x = 20\) decides much of the fit/);
  });
  it("refuses fits of different data and none at all", () => {
    const other = fitCurve(curves.line, { x: x.slice(1), y: straight.slice(1) });
    expect(() => compareFits({ fit, other })).toThrow("must rest on the same observations");
    expect(() => compareFits({})).toThrow("at least one fit");
  });
});

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

describe("lackOfFit and serialPattern", () => {
  it("need replicates, and a spare x", () => {
    expect(() => lackOfFit(fit)).toThrow("repeat a trial at the same x");
    const two = fitCurve(curves.line, { x: [1, 1, 2, 2], y: [1, 1.2, 2.2, 2] });
    expect(() => lackOfFit(two)).toThrow("log trials at another x");
  });
  it("see a bend that a straight line misses", () => {
    const bent = fitCurve(curves.line, {
      x: [...x, ...x],
      y: [...x, ...x].map((v, i) => 0.1 * v * v + 0.2 * noise[(i * 5 + (i > 11 ? 3 : 0)) % 12]),
    });
    expect(lackOfFit(bent).reading).toContain("try another form");
    const once = fitCurve(curves.line, { x, y: x.map((v) => 0.1 * v * v) });
    expect(serialPattern(once).reading).toContain("neighbours are alike");
    expect(serialPattern(once).durbinWatson).toBeLessThan(1);
  });
  it("take an order of their own", () => {
    const reversed = x.map((v) => -v);
    expect(serialPattern(fit, reversed).durbinWatson).toBeCloseTo(serialPattern(fit).durbinWatson, 12);
    expect(() => serialPattern(fit, [1, 2])).toThrow("one number for each of the 12 points");
  });
});

describe("deltaMethod", () => {
  it("gives the exact error of a linear quantity", () => {
    const at = deltaMethod(fit, ({ a, b }) => a + 6.5 * b);
    expect(at.value).toBeCloseTo(straight.reduce((sum, value) => sum + value, 0) / 12, 10);
    expect(at.standardError).toBeCloseTo(fit.residualSd / Math.sqrt(12), 8); // at the mean of x
  });
});

describe("fitRobustCurve", () => {
  it("returns the plain fit when nothing is far out, and bisquare shuts out what is", () => {
    const spoiled = straight.map((value, i) => (i === 8 ? value + 30 : value));
    const robust = fitRobustCurve(curves.line, { x, y: spoiled }, { loss: "bisquare" });
    expect(robust.n).toBe(12);
    expect(robust.robustWeights[8]).toBe(0);
    const without = fitCurve(curves.line, { x: x.filter((_, i) => i !== 8), y: straight.filter((_, i) => i !== 8) });
    expect(Math.abs(robust.parameters.b.estimate - without.parameters.b.estimate)).toBeLessThan(0.01);
    expect(Math.abs(robust.plain.parameters.b.estimate - without.parameters.b.estimate)).toBeGreaterThan(0.3);
  });
});

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
