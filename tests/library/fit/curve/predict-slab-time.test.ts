import { fitSlabTime, predictSlabTime, type SlabTimeFit } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

/** c0 (min), a (min/mm), b (min/mm²) */
type Truth = readonly [number, number, number];
const truths: Readonly<Record<string, Truth>> = {
  "a demo-like curve": [2.24, 0.645, 0.01034],
  "a line": [2.2, 0.75, 0],
  "a curve through zero": [0, 0.9, 0.01],
  "a line through zero": [0, 1, 0],
  "a strong bend": [2, 0.2, 0.04],
  "a bend alone": [3, 0, 0.05],
};
const designs: Readonly<Record<string, readonly number[]>> = {
  "14 trials": [5.9, 5.9, 7, 8.2, 8.2, 8.3, 9.8, 9.8, 10.5, 10.5, 12.3, 12.3, 14.3, 14.8],
  "7 trials": [9.9, 10.1, 12.7, 13, 15.8, 15.9, 16.2],
};
const timeOf = ([c0, a, b]: Truth, x: number): number => c0 + a * x + b * x * x;
const KITCHENS = 600;

/** Share of simulated kitchens whose bands hold the truth, and how wide they are on average as a share of it. */
function coverage(
  truth: Truth,
  thicknessMm: readonly number[],
  at: readonly number[],
  fitOf: (thicknessMm: readonly number[], timeMin: readonly number[]) => SlabTimeFit,
) {
  const random = seededRandom(20261125);
  const tally = at.map(() => ({ curve: 0, next: 0, width: 0 }));
  for (let kitchen = 0; kitchen < KITCHENS; kitchen++) {
    const times = thicknessMm.map((x) => timeOf(truth, x) * Math.exp(random.normal(0, 0.04)));
    const fit = fitOf(thicknessMm, times);
    at.forEach((x, k) => {
      const { confidence95, prediction95 } = predictSlabTime(fit, x);
      const mean = timeOf(truth, x);
      const next = mean * Math.exp(random.normal(0, 0.04));
      if (confidence95[0] <= mean && mean <= confidence95[1]) tally[k].curve += 1 / KITCHENS;
      if (prediction95[0] <= next && next <= prediction95[1]) tally[k].next += 1 / KITCHENS;
      tally[k].width += (confidence95[1] - confidence95[0]) / mean / KITCHENS;
    });
  }
  return tally;
}

describe("predictSlabTime in simulated kitchens", () => {
  const cases = Object.keys(designs).flatMap((design) => Object.keys(truths).map((truth) => [design, truth] as const));
  it.each(cases)("%s of %s: bands of 95 in 100 hold inside and outside what was tried", (design, truth) => {
    const L = designs[design];
    const [thinnest, thickest] = [Math.min(...L), Math.max(...L)];
    const inside = [thinnest, (thinnest + thickest) / 2, thickest];
    const outside = [0.6 * thinnest, 1.25 * thickest, 1.7 * thickest, 2.5 * thickest];
    const found = coverage(truths[truth], L, [...inside, ...outside], (thicknessMm, timeMin) =>
      fitSlabTime({ thicknessMm, timeMin, scatter: "proportional" }),
    );
    // 600 kitchens tell 95 % within 2 points; 3,000 of them gave 93.8 to 99.9 % for the curve, 92.1 to 99.8 for the next trial
    for (const { curve, next } of found) {
      expect(curve).toBeGreaterThanOrEqual(0.92);
      expect(next).toBeGreaterThanOrEqual(0.9);
    }
    // inside they are no wider than they need be
    for (const { curve, width } of found.slice(0, 3)) {
      expect(curve).toBeLessThanOrEqual(0.995);
      expect(width).toBeLessThan(0.2);
    }
    // and outside they do not hold by saying nothing: 25 % beyond the thickest, at most 30 % of the time
    expect(found[4].width).toBeLessThan(0.3);
  });
  it("holds 17.2 min at 18 mm and 24.8 min at 25 mm of a demo-like truth in 92 of 100 and more", () => {
    const found = coverage(truths["a demo-like curve"], designs["14 trials"], [18, 25], (thicknessMm, timeMin) =>
      fitSlabTime({ thicknessMm, timeMin, scatter: "proportional" }),
    );
    expect(timeOf(truths["a demo-like curve"], 18)).toBeCloseTo(17.2, 1);
    expect(timeOf(truths["a demo-like curve"], 25)).toBeCloseTo(24.8, 1);
    for (const { curve, next } of found) expect(Math.min(curve, next)).toBeGreaterThanOrEqual(0.93);
  });
  it("holds a bend beyond trials at two thicknesses, when the bands may bend", () => {
    const found = coverage(
      truths["a demo-like curve"],
      [7, 7, 7, 12, 12, 12],
      [7, 10, 12, 16, 25],
      (thicknessMm, timeMin) =>
        fitSlabTime({ thicknessMm, timeMin, scatter: "proportional", form: "linear", bandForm: "full" }),
    );
    for (const { curve } of found) expect(curve).toBeGreaterThanOrEqual(0.92);
    expect(found[4].width).toBeLessThan(1);
  });
});

describe("predictSlabTime", () => {
  const trials = { thicknessMm: [6, 6, 9, 9, 12, 12, 16, 16], timeMin: [8.9, 9.3, 11.6, 11.2, 14.3, 14.7, 19.2, 18.7] };
  it("gives half the width of the curve's interval over Student's t as its standard error", () => {
    // R 4.2.2: predict(lm(t ~ L), se.fit = TRUE) at L = 10, and qt(.975, 6)
    const at = predictSlabTime(fitSlabTime({ ...trials, form: "linear" }), 10);
    expect(at.standardErrorMin).toBeCloseTo((12.74178082 - 12.37160599) / 2.446911851, 6);
  });
  it("adds the scatter of one more trial to either side of its own", () => {
    const fit = fitSlabTime(trials);
    const { timeMin, confidence95, prediction95 } = predictSlabTime(fit, 25);
    const scatter = 2.570581836 * fit.residualSd; // qt(.975, 5)
    expect((prediction95[1] - timeMin) ** 2).toBeCloseTo((confidence95[1] - timeMin) ** 2 + scatter ** 2, 6);
    expect((timeMin - prediction95[0]) ** 2).toBeCloseTo((timeMin - confidence95[0]) ** 2 + scatter ** 2, 6);
  });
  it("predicts from the power law too, with one-sided trials", () => {
    const fit = fitSlabTime({
      ...trials,
      form: "powerLaw",
      oneSided: [{ thicknessMm: 20, lowerMin: 26, upperMin: null }],
    });
    const plain = fitSlabTime({ ...trials, form: "powerLaw" });
    expect(predictSlabTime(fit, 20).timeMin).toBeGreaterThan(predictSlabTime(plain, 20).timeMin + 0.2);
  });
  it("predicts nothing from a fit that did not converge", () => {
    const fit = { ...fitSlabTime(trials), converged: false };
    expect(() => predictSlabTime(fit, 10)).toThrow("predictSlabTime: fit must have converged");
  });
});
