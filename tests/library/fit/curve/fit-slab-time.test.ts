import { compareSlabTimeForms, fitSlabTime, predictSlabTime, type SlabTimeForm } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

// Invented trials of the Quarry Lane test kitchen, itself invented.
const trials = {
  thicknessMm: [6, 6, 9, 9, 12, 12, 16, 16],
  timeMin: [8.9, 9.3, 11.6, 11.2, 14.3, 14.7, 19.2, 18.7],
};

describe("fitSlabTime", () => {
  it("gives the straight line of ordinary regression", () => {
    // R 4.2.2: summary(lm(t ~ L)); predict(..., interval = ) at L = 10
    const fit = fitSlabTime({ ...trials, form: "linear" });
    expect(fit.parameters.c0.estimate).toBeCloseTo(2.798858447, 8);
    expect(fit.parameters.c0.standardError).toBeCloseTo(0.4556133192, 8);
    expect(fit.parameters.a.estimate).toBeCloseTo(0.9942922374, 8);
    expect(fit.parameters.a.standardError).toBeCloseTo(0.0400757017, 8);
    expect(fit.residualSd).toBeCloseTo(0.4193611507, 8);
    const at = predictSlabTime(fit, 10);
    expect(at.timeMin).toBeCloseTo(12.74178082, 7);
    expect(at.confidence95[0]).toBeCloseTo(12.37160599, 7);
    expect(at.prediction95[1]).toBeCloseTo(13.83264847, 7);
  });
  it("finds the curve that made noiseless times, in every form", () => {
    const L = [5, 7, 9, 12, 15, 20];
    const made: readonly [SlabTimeForm, (x: number) => number, Record<string, number>][] = [
      ["full", (x) => 2 + 0.5 * x + 0.04 * x * x, { c0: 2, a: 0.5, b: 0.04 }],
      ["noConstant", (x) => 0.5 * x + 0.04 * x * x, { c0: 0, a: 0.5, b: 0.04 }],
      ["linear", (x) => 2 + 0.5 * x, { c0: 2, a: 0.5, b: 0 }],
      ["powerLaw", (x) => 0.6 * x ** 1.3, { a: 0.6, p: 1.3 }],
    ];
    for (const [form, curve, wanted] of made) {
      const fit = fitSlabTime({ thicknessMm: L, timeMin: L.map(curve), form });
      expect(fit.converged).toBe(true);
      for (const [name, value] of Object.entries(wanted)) expect(fit.parameters[name].estimate).toBeCloseTo(value, 9);
    }
  });
  it("holds a coefficient at zero rather than let it go below, and says so", () => {
    const L = [5, 7, 9, 12, 15, 20];
    const bend = [4.1, 6.2, 7.9, 10.1, 11.7, 13.9]; // bends down: least squares would want b < 0
    const fit = fitSlabTime({ thicknessMm: L, timeMin: bend });
    expect(fit.parameters.b).toMatchObject({ estimate: 0, atBound: "lower", standardError: null, interval95: null });
    expect(fit.notices.join(" ")).toContain("b rests at its lower bound 0");
    const line = fitSlabTime({ thicknessMm: L, timeMin: bend, form: "linear" });
    expect(fit.parameters.a.estimate).toBeCloseTo(line.parameters.a.estimate, 8);
  });
  it("covers the true curve in about 95 of 100 repeated kitchens", () => {
    const random = seededRandom(11);
    const L = [6, 6, 9, 9, 12, 12, 16, 16, 20, 20];
    let covered = 0;
    for (let run = 0; run < 400; run++) {
      const timeMin = L.map((x) => 4 + 0.6 * x + 0.03 * x * x + random.normal(0, 0.4));
      const { confidence95 } = predictSlabTime(fitSlabTime({ thicknessMm: L, timeMin }), 10);
      if (confidence95[0] <= 13 && confidence95[1] >= 13) covered++;
    }
    expect(covered / 400).toBeGreaterThan(0.91);
    expect(covered / 400).toBeLessThan(0.985);
  });
  it("flags a thickness outside the trials", () => {
    const fit = fitSlabTime({ ...trials, form: "linear" });
    expect(predictSlabTime(fit, 16).extrapolated).toBe(false);
    expect(predictSlabTime(fit, 16.5).extrapolated).toBe(true);
  });
  it("refuses what cannot be fitted, in a sentence that says what to do", () => {
    const at = (thicknessMm: number[], timeMin: number[], form?: SlabTimeForm) => () =>
      fitSlabTime({ thicknessMm, timeMin, form });
    expect(at([9, 9, 9, 9], [10, 11, 12, 11])).toThrow("log trials at a second thickness");
    expect(at([9, 9, 12, 12], [10, 11, 14, 15])).toThrow("log trials at a third thickness");
    expect(at([6, 9, 12], [8, 11, 14])).toThrow("must number more than the 3 parameters");
    expect(at([6, 9, 12, 16], [8, 11, -2, 19])).toThrow("fitSlabTime: timeMin[2] must be > 0 min, got -2");
    expect(at([6, Number.NaN, 12, 16], [8, 11, 14, 19])).toThrow("fitSlabTime: thicknessMm[1] must be > 0 mm, got NaN");
    expect(at([6, 9, 12, 16], [8, 8, 8, 8])).toThrow("no curve can be told from a flat line");
    expect(at([6, 9, 12], [8, 11])).toThrow("must be equally long");
    expect(() => fitSlabTime({ ...trials, weights: [1, 1, 1, 0, 1, 1, 1, 1] })).toThrow(
      "weights[3] must be > 0; to leave a point out",
    );
    expect(at([6, 9, 12, 16], [8, 9, 10, 11], "cubic" as SlabTimeForm)).toThrow(
      "form must be one of full, noConstant, linear, powerLaw",
    );
  });
});

describe("compareSlabTimeForms", () => {
  it("says that a straight line needs no L² term", () => {
    const comparison = compareSlabTimeForms(trials);
    expect(comparison.best).toBe("linear");
    expect(comparison.reading).toContain("the L² term is not supported");
    expect(comparison.rows[0].deltaAicc).toBe(0);
    expect(comparison.rows.reduce((sum, row) => sum + row.weight, 0)).toBeCloseTo(1, 12);
  });
  it("sees a strong L² term and a strong constant", () => {
    const random = seededRandom(2);
    const thicknessMm = [5, 5, 8, 8, 11, 11, 14, 14, 18, 18, 22, 22];
    const timeMin = thicknessMm.map((x) => 6 + 0.3 * x + 0.05 * x * x + random.normal(0, 0.2));
    const comparison = compareSlabTimeForms({ thicknessMm, timeMin });
    expect(comparison.best).toBe("full");
    expect(comparison.reading).toMatch(
      /the L² term is supported .* by these 12 trials, and the constant c0 is supported/,
    );
  });
  it("leaves out a form that the trials cannot carry and notes why", () => {
    const comparison = compareSlabTimeForms({ thicknessMm: [9, 9, 12, 12], timeMin: [10, 11, 14, 15] });
    expect(comparison.fits.full).toBeUndefined();
    expect(comparison.notes[0]).toContain("log trials at a third thickness");
    expect(comparison.reading).toContain("too few to judge");
  });
});

describe("fitSlabTime with proportional scatter", () => {
  it("finds the share that times scatter by, and widens predictions with the time", () => {
    const random = seededRandom(8);
    const thicknessMm = [6, 6, 6, 9, 9, 9, 12, 12, 12, 16, 16, 16, 20, 20, 20];
    const timeMin = thicknessMm.map((x) => (4 + 0.6 * x) * (1 + random.normal(0, 0.05)));
    const fit = fitSlabTime({ thicknessMm, timeMin, form: "linear", scatter: "proportional" });
    // s has about 14 % noise at 13 degrees of freedom: 0.05 within 3 of these
    expect(Math.abs(fit.residualSd / 0.05 - 1)).toBeLessThan(3 * Math.sqrt(1 / 26));
    const width = (at: number): number => {
      const [low, high] = predictSlabTime(fit, at).prediction95;
      return high - low;
    };
    expect(width(20) / width(6)).toBeGreaterThan(1.5);
  });
});
