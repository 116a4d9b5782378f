import { censoredProbability, censoredQuantile, fitCensoredTimes } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

const checks = { lower: [8, 8, 10, 10, 12, 8, 10, 6], upper: [10, 10, 12, 12, 14, 10, 12, 8] };

describe("fitCensoredTimes", () => {
  it("quantile and probability undo each other", () => {
    const fit = fitCensoredTimes(checks);
    const { time } = censoredQuantile(fit, { probability: 0.8 });
    expect(censoredProbability(fit, time).probability).toBeCloseTo(0.8, 10);
  });
  it("narrow checks give what exact times give", () => {
    const random = seededRandom(9);
    const exact = Array.from({ length: 40 }, () => Math.exp(2.4 + 0.15 * random.normal()));
    const seen = fitCensoredTimes({ lower: exact, upper: exact, distribution: "lognormal" });
    const narrow = fitCensoredTimes({
      lower: exact.map((t) => t - 1e-4),
      upper: exact.map((t) => t + 1e-4),
      distribution: "lognormal",
    });
    const logs = exact.map(Math.log);
    const mean = logs.reduce((sum, value) => sum + value, 0) / 40;
    expect(seen.parameters.intercept.estimate).toBeCloseTo(mean, 10);
    expect(narrow.parameters.intercept.estimate).toBeCloseTo(mean, 6);
    expect(narrow.parameters.scale.estimate).toBeCloseTo(seen.parameters.scale.estimate, 6);
  });
  it("multiplying times moves the intercept alone", () => {
    const fit = fitCensoredTimes(checks);
    const seconds = fitCensoredTimes({
      lower: checks.lower.map((t) => 60 * t),
      upper: checks.upper.map((t) => 60 * t),
    });
    expect(seconds.parameters.intercept.estimate).toBeCloseTo(fit.parameters.intercept.estimate + Math.log(60), 8);
    expect(seconds.parameters.scale.estimate).toBeCloseTo(fit.parameters.scale.estimate, 8);
  });
  it("covers the true median about 95 times in 100 with checks every 2 min", () => {
    const random = seededRandom(3);
    let covered = 0;
    for (let run = 0; run < 300; run++) {
      const lower = Array.from({ length: 40 }, () => 2 * Math.floor(Math.exp(2.4 + 0.2 * random.normal()) / 2));
      const fit = fitCensoredTimes({ lower, upper: lower.map((t) => t + 2), distribution: "lognormal" });
      const { confidence95 } = censoredQuantile(fit);
      if (confidence95[0] <= Math.exp(2.4) && confidence95[1] >= Math.exp(2.4)) covered++;
    }
    expect(covered / 300).toBeGreaterThan(0.905);
    expect(covered / 300).toBeLessThan(0.985);
  });
  it("refuses what carries no answer, in a sentence that says what to do", () => {
    const never = Number.POSITIVE_INFINITY;
    expect(() => fitCensoredTimes({ lower: [10, 12, 14], upper: [never, never, never] })).toThrow(
      "carry some on for longer",
    );
    expect(() => fitCensoredTimes({ lower: [0, 0, 0], upper: [8, 8, 10] })).toThrow("check earlier");
    expect(() => fitCensoredTimes({ lower: [8, 8, 8, 8], upper: [10, 10, 10, 10] })).toThrow("check more often");
    expect(() => fitCensoredTimes({ lower: [8, -1, 8, 8], upper: [10, 10, 10, 10] })).toThrow(
      "lower[1] must be >= 0, got -1",
    );
    expect(() => fitCensoredTimes({ lower: [8, 12, 8, 8], upper: [10, 10, 10, 10] })).toThrow(
      "upper[1] must not be before lower[1] = 12",
    );
    expect(() => fitCensoredTimes({ lower: [8, Number.NaN], upper: [10, 10] })).toThrow("lower[1]");
    expect(() => fitCensoredTimes({ lower: [0, 8, 9], upper: [never, 10, 12] })).toThrow(
      "must have been checked at least once",
    );
    expect(() => fitCensoredTimes({ lower: [8, 9], upper: [10, 11] })).toThrow(
      "must number more than the 2 parameters",
    );
    expect(() => fitCensoredTimes({ ...checks, covariates: { thicknessMm: checks.lower.map(() => 9) } })).toThrow(
      "thicknessMm must vary: log trials at a second value of thicknessMm",
    );
    expect(() => fitCensoredTimes({ ...checks, covariates: { appliance: checks.lower.map(() => "small") } })).toThrow(
      "at least two different words",
    );
  });

  const never = Number.POSITIVE_INFINITY;
  const mixed = { lower: [8, 8, 10, 10, 12, 8], upper: [10, 10, 12, 12, 14, 10] };
  const places = [...mixed.lower.map(() => "oven"), "basket", "basket", "basket"];

  it("refuses an appliance whose trials were all crisp at the first look, naming it and what to add", () => {
    expect(() =>
      fitCensoredTimes({
        lower: [...mixed.lower, 0, 0, 0],
        upper: [...mixed.upper, 8, 8, 9],
        covariates: { appliance: places },
      }),
    ).toThrow(
      'fitCensoredTimes: appliance must leave a best value for every word, but every trial at "basket" was so at its first check: check earlier there, or leave "basket" out, got "basket"',
    );
  });
  it("refuses an appliance whose trials never were so, also when it is the first word", () => {
    expect(() =>
      fitCensoredTimes({
        lower: [10, 11, 12, ...mixed.lower],
        upper: [never, never, never, ...mixed.upper],
        covariates: { appliance: places.toReversed(), thicknessMm: [9, 12, 15, 8, 9, 10, 11, 12, 7] },
      }),
    ).toThrow(
      'appliance must leave a best value for every word, but no trial at "basket" was so by its last check: carry some on for longer there',
    );
  });
  it("refuses a setpoint that parts what was so from what never was", () => {
    expect(() =>
      fitCensoredTimes({
        lower: [0, 0, 0, 10, 12, 14],
        upper: [8, 9, 10, never, never, never],
        covariates: { setpointC: [200, 205, 200, 180, 175, 180] },
      }),
    ).toThrow(
      "setpointC must leave a best value, but it parts what was so from what was not, so no slope is the best: log trials between 180 and 200",
    );
  });
  it("refuses covariates that part them only together, naming both and not the third", () => {
    expect(() =>
      fitCensoredTimes({
        lower: [0, 10, 0, 10, 0, 10, 0, 10],
        upper: [10, never, 10, never, 10, never, 10, never],
        covariates: { a: [1, 2, 3, 4, 5, 6, 7, 8], b: [2, 1, 4, 3, 6, 5, 8, 7], c: [1, 5, 2, 2, 7, 1, 3, 3] },
      }),
    ).toThrow(
      "fitCensoredTimes: a and b must leave a best value, but together they part what was so from what was not",
    );
  });
  it("refuses one-sided checks that were all made at one time, and those that a curve passes between", () => {
    expect(() => fitCensoredTimes({ lower: [0, 10, 0, 10], upper: [10, never, 10, never] })).toThrow(
      "must not all be made at one time",
    );
    expect(() => fitCensoredTimes({ lower: [0, 8, 0, 9], upper: [10, never, 11, never] })).toThrow("check more often");
  });
  it("refuses one-sided checks that find it less often the later they are", () => {
    expect(() =>
      fitCensoredTimes({
        lower: [0, 0, 0, 8, 12, 12, 12, 0],
        upper: [8, 8, 8, never, never, never, never, 12],
      }),
    ).toThrow("found it so less often at late checks than at early ones");
  });
  it("fits a word whose trials are one-sided both ways, and a word with one trial on each side", () => {
    const fit = fitCensoredTimes({
      lower: [...mixed.lower, 0, 9, 0],
      upper: [...mixed.upper, 10, never, 11],
      covariates: { appliance: places },
    });
    expect(fit.parameters["appliance[basket]"].standardError).toBeLessThan(1);
  });
  it("takes no null for a first check of 0", () => {
    expect(() => fitCensoredTimes({ ...checks, lower: [null as unknown as number, ...checks.lower.slice(1)] })).toThrow(
      "lower[0] must be >= 0, got null",
    );
  });
});
