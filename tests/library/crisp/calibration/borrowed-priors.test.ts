import { describe, expect, it } from "vitest";
import { borrowedPriors } from "../../../../kernel-lib/library/src/crisp/calibration/borrowed-priors";
import type { CrispCalibration } from "../../../../kernel-lib/library/src/crisp/calibration/calibrate-crisp";
import { calibrationAt } from "../sample-food";

/** A calibration whose trials tell of the coefficient with the given estimate and posterior sd (in prior sds). */
function telling(estimate: number, sd: number): CrispCalibration {
  const base = calibrationAt([0, 0, 0, 0, 0, 0, 0, 0, 0], sd);
  const constants = base.constants.map((constant, at) =>
    at === 0 ? { ...constant, estimate, dataShare: 1 - sd * sd } : { ...constant, dataShare: 0 },
  );
  return { ...base, constants };
}

describe("borrowedPriors", () => {
  it("keeps one product's estimate, as wide as its doubt and the spread between products", () => {
    const [prior, ...none] = borrowedPriors([{ name: "a", calibration: telling(46, 0.1) }]);
    expect(none).toEqual([]);
    expect(prior.middle).toBeCloseTo(46, 9);
    const own = (0.1 * Math.log(1.6)) ** 2;
    expect(Math.log(prior.spread) ** 2).toBeCloseTo(own + 2 * Math.log(1.08) ** 2, 9);
    expect(prior.from).toBe("the trials of a in this kitchen");
  });

  it("weighs the sure product more, and leaves out one that tells nothing", () => {
    const [prior] = borrowedPriors([
      { name: "sure", calibration: telling(40, 0.05) },
      { name: "vague", calibration: telling(60, 0.6) },
    ]);
    expect(prior.middle).toBeGreaterThan(40);
    expect(prior.middle).toBeLessThan(44);
    expect(borrowedPriors([{ name: "silent", calibration: telling(60, 0.9) }])).toEqual([]);
  });
});
