import { curves, fitCurve, leastSquares } from "slabwright/fit";
import { describe, expect, it } from "vitest";
import { correctedAic, waldInterval } from "../../../../kernel-lib/library/src/fit/least-squares/summarise-fit";

describe("correctedAic", () => {
  it("is −2 ln L + 2k + 2k(k + 1)/(n − k − 1), and infinite where no observation is left for it", () => {
    expect(correctedAic(-10, 3, 10)).toBeCloseTo(20 + 6 + 24 / 6, 12);
    expect(correctedAic(-10, 3, 5)).toBeCloseTo(20 + 6 + 24, 12);
    expect(correctedAic(-10, 3, 4)).toBe(Number.POSITIVE_INFINITY);
    expect(correctedAic(-10, 3, 3)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("waldInterval", () => {
  it("is even about the value, even on the logarithm where it is searched there, and ends at the bounds", () => {
    expect(waldInterval(5, 2, { start: 1 })).toEqual([3, 7]);
    expect(waldInterval(5, 2, { start: 1, lower: 4, upper: 6 })).toEqual([4, 6]);
    const [low, high] = waldInterval(5, 2, { start: 1, scale: "log" });
    expect(high).toBeCloseTo(5 * Math.exp(0.4), 12);
    expect(low * high).toBeCloseTo(25, 12);
  });
});

describe("summariseFit, by the example of a line", () => {
  const x = [1, 2, 3, 6];
  const y = [3, 4, 8, 13];
  const residuals = ({ a, b }: { a: number; b: number }): number[] => x.map((xi, i) => y[i] - a - b * xi);
  const rss = 62 - 29 ** 2 / 14;

  it("has the covariance, correlation, leverages and criteria of the textbook", () => {
    const fit = leastSquares({ parameters: { a: 0, b: 1 }, residuals });
    const square = rss / 2;
    expect(fit.residualSd).toBeCloseTo(Math.sqrt(square), 9);
    expect(fit.covariance[1][1]).toBeCloseTo(square / 14, 8);
    expect(fit.covariance[0][0]).toBeCloseTo(square * (1 / 4 + 9 / 14), 8);
    expect(fit.covariance[0][1]).toBeCloseTo((-3 * square) / 14, 8);
    expect(fit.covariance[1][0]).toBe(fit.covariance[0][1]);
    // −3/√(14·(1/4 + 9/14)·14)
    expect(fit.correlation[0][1]).toBeCloseTo(-3 / 14 / Math.sqrt((1 / 14) * (1 / 4 + 9 / 14)), 8);
    expect(fit.correlation[0][0]).toBe(1);
    x.forEach((value, i) => {
      expect(fit.leverage[i]).toBeCloseTo(1 / 4 + (value - 3) ** 2 / 14, 8);
    });
    const logLikelihood = -2 * (Math.log((2 * Math.PI * rss) / 4) + 1);
    expect(fit.logLikelihood).toBeCloseTo(logLikelihood, 8);
    expect(fit.bic).toBeCloseTo(-2 * logLikelihood + 3 * Math.log(4), 8);
    // columns of length 2 and √50 with Σx = 12 between them
    const cosine = 12 / (2 * Math.sqrt(50));
    expect(fit.conditionNumber).toBeCloseTo(Math.sqrt((1 + cosine) / (1 - cosine)), 6);
    expect(fit.degreesOfFreedom).toBe(2);
  });

  it("counts no scatter where the residuals come in standard deviations, and then may use up all observations", () => {
    const known = leastSquares({ parameters: { a: 0, b: 1 }, residuals, sdKnown: true });
    expect(known.covariance[1][1]).toBeCloseTo(1 / 14, 8);
    expect(known.logLikelihood).toBeCloseTo(-2 * Math.log(2 * Math.PI) - rss / 2, 8);
    expect(known.bic).toBeCloseTo(-2 * known.logLikelihood + 2 * Math.log(4), 8);
    const two = leastSquares({
      parameters: { a: 0, b: 1 },
      residuals: (at) => residuals(at).slice(0, 2),
      sdKnown: true,
    });
    expect(two.degreesOfFreedom).toBe(0);
    expect(two.residualSd).toBe(0);
    // y = 3, 4 at x = 1, 2: var b = 1/Σ(x − 1.5)² = 2
    expect(two.parameters.b.standardError).toBeCloseTo(Math.SQRT2, 7);
    expect(two.parameters.b.interval95?.[1]).toBeCloseTo(1 + 1.959963985 * Math.SQRT2, 6);
  });

  it("gives a parameter on the logarithm the standard error of the value itself", () => {
    const log = leastSquares({ parameters: { a: 0, b: { start: 1, scale: "log" } }, residuals });
    const plain = leastSquares({ parameters: { a: 0, b: 1 }, residuals });
    expect(log.parameters.b.standardError).toBeCloseTo(plain.parameters.b.standardError ?? 0, 6);
    expect(log.covariance[0][1]).toBeCloseTo(plain.covariance[0][1], 6);
    const [low, high] = log.parameters.b.interval95 ?? [0, 0];
    expect(low * high).toBeCloseTo(log.parameters.b.estimate ** 2, 6);
  });

  it("warns of parameters that only their sum can be told of, and of none that stand apart", () => {
    const far = [1000, 1001, 1002, 1003, 1004];
    const fit = leastSquares({
      parameters: { a: 0, b: 1 },
      residuals: ({ a, b }) => far.map((xi, i) => [1, 2.2, 2.9, 4.1, 5][i] - a - b * xi),
    });
    expect(fit.notices.join(" ")).toContain("a and b are correlated -1.0000: the data scarcely tell them apart");
    expect(fit.notices.join(" ")).not.toContain("nearly depend");
    const further = leastSquares({
      parameters: { a: 0, b: 1 },
      residuals: ({ a, b }) => far.map((xi, i) => [1, 2.2, 2.9, 4.1, 5][i] - a - b * (xi + 99_000)),
    });
    expect(further.notices.join(" ")).toContain("The parameters nearly depend on each other (condition number");
    expect(leastSquares({ parameters: { a: 0, b: 1 }, residuals }).notices).toEqual([]);
  });

  it("leaves a parameter at its bound out of what is counted, and gives the rest as if it were known", () => {
    const held = leastSquares({ parameters: { a: 0, b: { start: 1, upper: 1.5 } }, residuals });
    const fixed = leastSquares({ parameters: { a: 0, b: { start: 1.5, fixed: true } }, residuals });
    expect(held.parameters.b.atBound).toBe("upper");
    expect(held.logLikelihood).toBeCloseTo(fixed.logLikelihood, 8);
    expect(held.bic).toBeCloseTo(fixed.bic, 8);
    // the scatter is told by one observation less
    expect(held.covariance[0][0] / fixed.covariance[0][0]).toBeCloseTo(3 / 2, 8);
    expect(held.covariance[1]).toEqual([0, 0]);
    expect(held.correlation[1]).toEqual([0, 0]);
    const low = leastSquares({ parameters: { a: { start: 5, lower: 4 }, b: 1 }, residuals });
    expect(low.notices).toEqual([
      "a rests at its lower bound 4: it has no standard error, and the others are given as if it were known.",
    ]);
  });

  it("keeps weights in the likelihood", () => {
    const weights = [1, 2, 4, 0.5];
    const fit = fitCurve(curves.line, { x, y, weights });
    const logs = weights.reduce((sum, weight) => sum + Math.log(weight), 0);
    expect(fit.logLikelihood).toBeCloseTo(0.5 * logs - 2 * (Math.log((2 * Math.PI * fit.rss) / 4) + 1), 8);
  });
});
