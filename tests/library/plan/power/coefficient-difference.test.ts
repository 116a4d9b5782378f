import { curves } from "slabwright/fit";
import {
  gradientModel,
  powerOfCoefficientDifference,
  powerOfTwoMeans,
  replicatesForCoefficientDifference,
  termsModel,
  trialsForTwoMeans,
} from "slabwright/plan";
import { describe, expect, it } from "vitest";

const line = termsModel({ factors: ["x"], terms: ["1", "x"] });
const constant = termsModel({ factors: ["x"], terms: ["1"] });

describe("a difference in one coefficient of two curves", () => {
  it("is, for a constant, the difference of two means", () => {
    const design = { model: constant, points: [[0]], term: "1", difference: 1, sd: 1 };
    expect(powerOfCoefficientDifference(design, 20)).toBeCloseTo(powerOfTwoMeans({ difference: 1, sd: 1 }, 20), 12);
    expect(replicatesForCoefficientDifference(design)).toBeCloseTo(trialsForTwoMeans({ difference: 1, sd: 1 }), 6);
  });

  it("agrees for two slopes with R 4.2.2's pt(qt(.975, df), df, ncp, lower = FALSE)", () => {
    const design = { model: line, points: [[-1], [0], [1]], term: "x", difference: 1, sd: 0.5 };
    expect(powerOfCoefficientDifference(design, 1)).toBeCloseTo(0.2180044745421, 10);
    expect(powerOfCoefficientDifference(design, 2)).toBeCloseTo(0.6984557744174, 10);
  });

  it("is seen sooner where the runs tell the coefficient better, whatever the units", () => {
    const at = { start: 10, rate: 0.2 };
    const model = gradientModel({ model: curves.firstOrderDecay, at });
    const asked = { model, term: "rate", difference: 0.05, sd: 0.3 };
    const best = replicatesForCoefficientDifference({ ...asked, points: [0, 0, 5, 5] });
    expect(replicatesForCoefficientDifference({ ...asked, points: [0, 0, 1, 1] })).toBeGreaterThan(2 * best);
    const inHundredths = gradientModel({ model: curves.firstOrderDecay, at: { start: 1000, rate: 0.2 } });
    const other = replicatesForCoefficientDifference({ ...asked, model: inHundredths, sd: 30, points: [0, 0, 5, 5] });
    expect(other).toBeCloseTo(best, 6);
  });

  it("says what is wrong in one sentence", () => {
    const design = { model: line, points: [[-1], [1]], term: "x", difference: 1, sd: 0.5 };
    expect(() => powerOfCoefficientDifference({ ...design, term: "y" }, 2)).toThrow("term must be one of 1, x");
    expect(() => powerOfCoefficientDifference(design, 1)).toThrow("replicates must be > 1, to leave some scatter");
    expect(() => powerOfCoefficientDifference({ ...design, points: [[1], [1]] }, 3)).toThrow(
      "add runs at other levels",
    );
  });
});
