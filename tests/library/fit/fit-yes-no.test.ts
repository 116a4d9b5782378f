import { fitOrderedScores, fitYesNo, predictOrderedScores, predictYesNo, valueAtShare } from "slabwright";
import { describe, expect, it } from "vitest";

describe("fitYesNo", () => {
  const timeMin = [8, 8, 10, 10, 12, 12, 14, 14, 16, 16];
  const yes = [0, 0, 0, 1, 0, 1, 1, 0, 1, 1];
  it("counts out of a number give what single outcomes give", () => {
    const single = fitYesNo({ covariates: { timeMin }, yes });
    const counted = fitYesNo({
      covariates: { timeMin: [8, 10, 12, 14, 16] },
      yes: [0, 1, 1, 1, 2],
      of: [2, 2, 2, 2, 2],
    });
    expect(counted.parameters.timeMin.estimate).toBeCloseTo(single.parameters.timeMin.estimate, 9);
    expect(counted.parameters.timeMin.standardError).toBeCloseTo(single.parameters.timeMin.standardError ?? 0, 9);
  });
  it("takes true and false", () => {
    const fit = fitYesNo({ covariates: { timeMin }, yes: yes.map(Boolean) });
    expect(
      predictYesNo(fit, { timeMin: valueAtShare(fit, { covariate: "timeMin", share: 0.7 }).value }).probability,
    ).toBeCloseTo(0.7, 9);
  });
  it("gives no Fieller interval where the slope may be zero, and says so", () => {
    const fit = fitYesNo({ covariates: { timeMin }, yes: [1, 0, 1, 0, 0, 1, 1, 0, 1, 0] });
    const half = valueAtShare(fit, { covariate: "timeMin" });
    expect(half.fieller95).toBeNull();
    expect(half.reading).toContain("log more trials");
  });
  it("refuses separation and one-sided outcomes, saying where to log trials", () => {
    expect(() => fitYesNo({ covariates: { timeMin: [8, 9, 10, 12, 13, 14] }, yes: [0, 0, 0, 1, 1, 1] })).toThrow(
      "separates them perfectly, so no slope is the best: log trials between 10 and 12",
    );
    expect(() => fitYesNo({ covariates: { timeMin: [8, 9, 10, 10, 13, 14] }, yes: [0, 0, 0, 1, 1, 1] })).toThrow(
      "log trials around 10",
    );
    expect(() => fitYesNo({ covariates: { timeMin }, yes: timeMin.map(() => 1) })).toThrow(
      "every outcome is yes; log trials that fail",
    );
    expect(() => fitYesNo({ covariates: { timeMin }, yes: timeMin.map(() => 0) })).toThrow(
      "every outcome is no; log trials that succeed",
    );
    expect(() => fitYesNo({ covariates: { timeMin }, yes: [2, ...yes.slice(1)] })).toThrow(
      "yes[0] must be yes or no (1 or 0), got 2",
    );
    // two covariates that only together separate: yes where time > thickness
    expect(() =>
      fitYesNo({
        covariates: { a: [1, 2, 3, 4, 5, 6, 7, 8], b: [2, 1, 4, 3, 6, 5, 8, 7] },
        yes: [0, 1, 0, 1, 0, 1, 0, 1],
      }),
    ).toThrow("together they separate them");
  });
});

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
