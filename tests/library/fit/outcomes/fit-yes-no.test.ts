import { fitYesNo, predictYesNo, valueAtShare } from "slabwright/fit";
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

  it("names a word that has one outcome only, the first word too", () => {
    const appliance = ["oven", "oven", ...timeMin.slice(2).map(() => "basket")];
    expect(() => fitYesNo({ covariates: { timeMin, appliance }, yes: [0, 0, 0, 1, 0, 1, 1, 0, 1, 1] })).toThrow(
      'fitYesNo: appliance must leave a best value for every word, but every outcome at "oven" is no: log trials that succeed there, or leave "oven" out, got "oven"',
    );
    const turned = ["basket", ...timeMin.slice(1, 8).map(() => "basket"), "oven", "oven"];
    expect(() => fitYesNo({ covariates: { appliance: turned }, yes })).toThrow(
      'every outcome at "oven" is yes: log trials that fail there',
    );
  });
  it("names the covariates that separate only together, and leaves out those that do not", () => {
    expect(() =>
      fitYesNo({
        covariates: { a: [1, 2, 3, 4, 5, 6, 7, 8], b: [2, 1, 4, 3, 6, 5, 8, 7], c: [1, 5, 2, 2, 7, 1, 3, 3] },
        yes: [0, 1, 0, 1, 0, 1, 0, 1],
      }),
    ).toThrow("fitYesNo: a and b must leave yes and no mixed somewhere, but together they separate them");
  });
  it("fits outcomes that one trial keeps from separation, however steep", () => {
    const x = [1, 2, 3, 4, 5, 6, 7, 8, 8.01, 8, 9, 10, 11, 12];
    const fit = fitYesNo({ covariates: { x }, yes: x.map((value, i) => (i === 8 ? 0 : Number(value >= 8 && i > 7))) });
    expect(fit.converged).toBe(true);
    // both sides of the tie at 8 and the no at 8.01 leave finite odds at 12, larger than 25
    expect(fit.parameters.intercept.estimate + 12 * fit.parameters.x.estimate).toBeGreaterThan(25);
  });
  it("takes no null, undefined, text or NaN for no", () => {
    for (const value of [null, undefined, "", "1", Number.NaN, []]) {
      const given = [value as unknown as number, ...yes.slice(1)];
      expect(() => fitYesNo({ covariates: { timeMin }, yes: given })).toThrow("yes[0] must be yes or no (1 or 0), got");
    }
  });
});
