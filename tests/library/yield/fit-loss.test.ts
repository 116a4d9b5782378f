import { describe, expect, it } from "vitest";
import { seededRandom } from "../../../kernel-lib/library/src/statistics/random/seeded-random";
import { fitLoss, type LossTrial, predictLoss } from "../../../kernel-lib/library/src/yield/fit-loss";

const truth = (thicknessMm: number, timeMin: number, setpointC: number): number =>
  2 - 1.1 * thicknessMm + 0.9 * timeMin + 0.06 * setpointC;

function trials(seed: number, sd: number): LossTrial[] {
  const random = seededRandom(seed);
  return [6, 9, 12].flatMap((thicknessMm) =>
    [8, 11, 14].flatMap((timeMin) =>
      [180, 200].map((setpointC) => {
        const loss = truth(thicknessMm, timeMin, setpointC) + random.normal(0, sd);
        return { thicknessMm, timeMin, setpointC, massBeforeG: 150, massAfterG: 150 * (1 - loss / 100) };
      }),
    ),
  );
}

describe("fitLoss", () => {
  it("finds the plane behind exact trials", () => {
    const { fit, predictors } = fitLoss(trials(1, 1e-9));
    expect(predictors).toEqual(["thicknessMm", "timeMin", "setpointC"]);
    expect(fit.parameters.intercept.estimate).toBeCloseTo(2, 5);
    expect(fit.parameters.thicknessMm.estimate).toBeCloseTo(-1.1, 6);
    expect(fit.parameters.timeMin.estimate).toBeCloseTo(0.9, 6);
    expect(fit.parameters.setpointC.estimate).toBeCloseTo(0.06, 7);
  });

  it("covers the truth with its 95 % intervals about 95 % of the time", () => {
    let covered = 0;
    let coveredNext = 0;
    const rounds = 400;
    const at = { thicknessMm: 8, timeMin: 10, setpointC: 190 };
    for (let seed = 1; seed <= rounds; seed++) {
      const { confidence95, prediction95 } = predictLoss(fitLoss(trials(seed, 1.5)), at);
      const mean = truth(8, 10, 190);
      const next = mean + seededRandom(10_000 + seed).normal(0, 1.5);
      if (confidence95[0] <= mean && mean <= confidence95[1]) covered += 1;
      if (prediction95[0] <= next && next <= prediction95[1]) coveredNext += 1;
    }
    // Binomial 0.95 over 400: standard deviation 4.4; four of them
    expect(Math.abs(covered - 0.95 * rounds)).toBeLessThan(17.5);
    expect(Math.abs(coveredNext - 0.95 * rounds)).toBeLessThan(17.5);
  });

  it("leaves out what never varied, and flags another value of it", () => {
    const one = trials(2, 0.5).filter((trial) => trial.setpointC === 200);
    const loss = fitLoss(one);
    expect(loss.leftOut).toEqual(["setpointC is 200 in every trial"]);
    expect(predictLoss(loss, { thicknessMm: 8, timeMin: 10, setpointC: 200 }).extrapolated).toBe(false);
    expect(predictLoss(loss, { thicknessMm: 8, timeMin: 10, setpointC: 180 }).extrapolated).toBe(true);
    expect(predictLoss(loss, { thicknessMm: 20, timeMin: 10, setpointC: 200 }).extrapolated).toBe(true);
  });

  it("flags a combination that was not tried, though each value was", () => {
    const tied = [6, 8, 10, 12].flatMap((thicknessMm, at) =>
      [0, 1].map((more) => ({
        thicknessMm,
        timeMin: thicknessMm + more,
        setpointC: 200,
        massBeforeG: 100,
        massAfterG: 80 + at - more + 0.1 * ((at + more) % 3),
      })),
    );
    const loss = fitLoss(tied);
    expect(predictLoss(loss, { thicknessMm: 9, timeMin: 9.5, setpointC: 200 }).extrapolated).toBe(false);
    expect(predictLoss(loss, { thicknessMm: 12, timeMin: 7, setpointC: 200 }).extrapolated).toBe(true);
  });

  it("refuses a gain and trials that are all alike", () => {
    const [first] = trials(3, 1);
    expect(() => fitLoss([{ ...first, massAfterG: 160 }])).toThrow(
      "must weigh at most 2 % more after than its 150 g before, got 160",
    );
    expect(() => fitLoss([first, first, first])).toThrow("must vary in thickness, time or setpoint");
    expect(() => fitLoss([{ ...first, massAfterG: 0 }])).toThrow("trial 1 must be weighed before and after");
  });
});
