import { fitOrderedScores, predictOrderedScores } from "slabwright/fit";
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
      "timeMin must leave neighbouring scores mixed, but it separates them perfectly, so no slope is the best: log trials between 10 and 11, between 13 and 14",
    );
  });

  it("refuses a word that only ever scores the best or the worst, naming it and what to add", () => {
    const where = [...timeMin.map(() => "oven"), "basket", "basket"];
    const covariates = { timeMin: [...timeMin, 9, 10], appliance: where };
    const score = [1, 1, 2, 1, 2, 3, 2, 3, 3];
    expect(() => fitOrderedScores({ covariates, score: [...score, 3, 3] })).toThrow(
      'fitOrderedScores: appliance must leave a best value for every word, but every score at "basket" is 3, the highest: log trials that score lower there, or leave "basket" out, got "basket"',
    );
    expect(() => fitOrderedScores({ covariates, score: [...score, 1, 1] })).toThrow(
      'every score at "basket" is 1, the lowest: log trials that score higher there',
    );
    const fit = fitOrderedScores({ covariates, score: [...score, 2, 3] });
    expect(fit.parameters["appliance[basket]"].standardError).toBeLessThan(100);
  });
  it("refuses scores that a covariate parts at one cut while they tie at the other", () => {
    expect(() => fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 1, 2, 2, 3, 3, 3, 3] })).toThrow(
      "between 10 and 11, between 12 and 13",
    );
    // parted at the first cut, mixed at the second: the slope is told by the second
    expect(
      fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 1, 2, 3, 2, 3, 2, 3] }).parameters.timeMin.estimate,
    ).toBeGreaterThan(0);
  });
  it("refuses covariates that follow from each other, and says nothing where all is well", () => {
    const score = [1, 1, 2, 1, 2, 3, 2, 3, 3];
    expect(() => fitOrderedScores({ covariates: { timeMin, seconds: timeMin.map((t) => 60 * t + 5) }, score })).toThrow(
      "must not be sums of each other",
    );
    expect(fitOrderedScores({ covariates: { timeMin }, score }).notices).toEqual([]);
  });
});
