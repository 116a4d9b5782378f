import { fitOrderedScores, predictOrderedScores } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const timeMin = [8, 9, 10, 11, 12, 13, 14, 15, 16];
const fit = fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 2, 1, 2, 3, 2, 3, 3] });

describe("predictOrderedScores", () => {
  it("gives each score or better its odds, and an interval of 1.96 standard errors of them on either side", () => {
    const at = 12.5;
    const { rows } = predictOrderedScores(fit, { timeMin: at });
    const slope = fit.parameters.timeMin.estimate;
    const [, low, high] = fit.names.map((name) => fit.parameters[name].estimate);
    [low, high].forEach((cut, k) => {
      // log odds of a score above the cut: b·x − cut, with variance x² Vbb − 2 x Vbc + Vcc
      const odds = slope * at - cut;
      const [bb, bc, cc] = [fit.covariance[0][0], fit.covariance[0][k + 1], fit.covariance[k + 1][k + 1]];
      const half = 1.959963985 * Math.sqrt(at * at * bb - 2 * at * bc + cc);
      const share = (value: number): number => 1 / (1 + Math.exp(-value));
      const row = rows[k + 1];
      expect(row.atLeast).toBeCloseTo(share(odds), 9);
      expect(row.atLeast95[0]).toBeCloseTo(share(odds - half), 7);
      expect(row.atLeast95[1]).toBeCloseTo(share(odds + half), 7);
    });
    expect(rows[0].atLeast).toBe(1);
    expect(rows[0].atLeast95).toEqual([1, 1]);
  });
  it("splits one into the scores' probabilities and weighs them into the mean score", () => {
    const { rows, expected } = predictOrderedScores(fit, { timeMin: 11 });
    const [one, two, three] = rows;
    expect(one.probability).toBeCloseTo(1 - two.atLeast, 12);
    expect(two.probability).toBeCloseTo(two.atLeast - three.atLeast, 12);
    expect(three.probability).toBeCloseTo(three.atLeast, 12);
    expect(expected).toBeCloseTo(one.probability + 2 * two.probability + 3 * three.probability, 12);
  });
  it("flags times that were not tried", () => {
    expect(predictOrderedScores(fit, { timeMin: 16 }).extrapolated).toBe(false);
    expect(predictOrderedScores(fit, { timeMin: 16.1 }).extrapolated).toBe(true);
    expect(predictOrderedScores(fit, { timeMin: 7.9 }).extrapolated).toBe(true);
  });
});
