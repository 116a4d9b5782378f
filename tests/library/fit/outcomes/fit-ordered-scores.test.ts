import { fitOrderedScores, predictOrderedScores } from "slabwright";
import { describe, expect, it } from "vitest";

describe("fitOrderedScores", () => {
  const timeMin = [8, 9, 10, 11, 12, 13, 14, 15, 16];
  it("probabilities sum to 1 and the best score gains with time", () => {
    const fit = fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 2, 1, 2, 3, 2, 3, 3] });
    const early = predictOrderedScores(fit, { timeMin: 9 });
    const late = predictOrderedScores(fit, { timeMin: 15 });
    expect(early.rows.reduce((sum, row) => sum + row.probability, 0)).toBeCloseTo(1, 12);
    expect(late.expected).toBeGreaterThan(early.expected);
    expect(late.rows[2].atLeast95[0]).toBeLessThan(late.rows[2].atLeast);
  });
  it("only the order of scores counts", () => {
    const plain = fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 2, 1, 2, 3, 2, 3, 3] });
    const odd = fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 5, 1, 5, 9, 5, 9, 9] });
    expect(odd.parameters.timeMin.estimate).toBeCloseTo(plain.parameters.timeMin.estimate, 12);
  });
  it("refuses two scores, one score, and perfect separation", () => {
    expect(() => fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 2, 1, 2, 2, 2, 2, 2] })).toThrow(
      "for two use fitYesNo",
    );
    expect(() => fitOrderedScores({ covariates: { timeMin }, score: timeMin.map(() => 4) })).toThrow(
      "all 9 scores are equal",
    );
    expect(() => fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 1, 2, 2, 2, 3, 3, 3] })).toThrow(
      "they separate them",
    );
  });
});
