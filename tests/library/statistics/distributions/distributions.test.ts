import {
  chiSquaredCdf,
  chiSquaredPValue,
  chiSquaredQuantile,
  fCdf,
  fPValue,
  fQuantile,
  normalCdf,
  normalDensity,
  normalQuantile,
  studentTCdf,
  studentTPValue,
  studentTQuantile,
} from "slabwright/statistics";
import { describe, expect, it } from "vitest";

/** Agreeing digits: −log10 of the relative error. */
const digits = (got: number, wanted: number): number =>
  got === wanted ? 16 : -Math.log10(Math.abs(got - wanted) / Math.abs(wanted));

// R 4.2.2, options(digits=17): qt, qnorm, qf, qchisq, pt, pf, pchisq, pnorm; target 8 digits, held to 12.
const REFERENCE: readonly (readonly [string, () => number, number])[] = [
  ["qt(.975,1)", () => studentTQuantile(0.975, 1), 12.706204736174694],
  ["qt(.975,2)", () => studentTQuantile(0.975, 2), 4.302652729749462],
  ["qt(.975,7)", () => studentTQuantile(0.975, 7), 2.3646242515927844],
  ["qt(.975,1000)", () => studentTQuantile(0.975, 1000), 1.9623390808264076],
  ["qt(1e-10,4)", () => studentTQuantile(1e-10, 4), -416.17514032960423],
  ["qt(.6,4)", () => studentTQuantile(0.6, 4), 0.27072229470759746],
  ["qnorm(1e-300)", () => normalQuantile(1e-300), -37.0470962993612],
  ["qnorm(1e-10)", () => normalQuantile(1e-10), -6.361340902404056],
  ["qnorm(.6)", () => normalQuantile(0.6), 0.2533471031357998],
  ["qnorm(.975)", () => normalQuantile(0.975), 1.9599639845400536],
  ["qf(.95,1,10)", () => fQuantile(0.95, 1, 10), 4.96460274373071],
  ["qf(.95,2,7)", () => fQuantile(0.95, 2, 7), 4.737414127775881],
  ["qf(.95,5,100)", () => fQuantile(0.95, 5, 100), 2.305318241675227],
  ["qf(.95,3,2)", () => fQuantile(0.95, 3, 2), 19.164292127511274],
  ["qf(.001,4,6)", () => fQuantile(0.001, 4, 6), 0.019792173489934783],
  ["qchisq(.001,3)", () => chiSquaredQuantile(0.001, 3), 0.024297585815692732],
  ["qchisq(.999,3)", () => chiSquaredQuantile(0.999, 3), 16.26623619623813],
  ["pt(-30,7)", () => studentTCdf(-30, 7), 5.894234440366563e-9],
  ["pt(.1,7)", () => studentTCdf(0.1, 7), 0.5384259701976037],
  ["pt(5,7)", () => studentTCdf(5, 7), 0.9992173610234136],
  ["pf(50,3,20,lower=F)", () => fPValue(50, 3, 20), 1.7760683360454808e-9],
  ["pchisq(100,3,lower=F)", () => chiSquaredPValue(100, 3), 1.5541594313896051e-21],
  ["pnorm(-20)", () => normalCdf(-20), 2.7536241186062337e-89],
  ["pnorm(3)", () => normalCdf(3), 0.9986501019683699],
];

describe("distributions against R 4.2.2", () => {
  for (const [call, ours, wanted] of REFERENCE) {
    it(`${call} to 12 digits`, () => expect(digits(ours(), wanted)).toBeGreaterThan(12));
  }
});

describe("distributions hang together", () => {
  it("each quantile undoes its cdf", () => {
    for (const p of [0.001, 0.2, 0.5, 0.9, 0.9999]) {
      expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 12);
      expect(studentTCdf(studentTQuantile(p, 3.5), 3.5)).toBeCloseTo(p, 12);
      expect(fCdf(fQuantile(p, 3, 8.5), 3, 8.5)).toBeCloseTo(p, 12);
      expect(chiSquaredCdf(chiSquaredQuantile(p, 0.7), 0.7)).toBeCloseTo(p, 12);
    }
  });
  it("t squared is F with one numerator degree of freedom", () => {
    expect(studentTQuantile(0.975, 9) ** 2).toBeCloseTo(fQuantile(0.95, 1, 9), 10);
    expect(studentTPValue(1.7, 9)).toBeCloseTo(fPValue(1.7 ** 2, 1, 9), 12);
  });
  it("t with infinitely many degrees of freedom is the normal", () => {
    expect(studentTQuantile(0.975, Number.POSITIVE_INFINITY)).toBe(normalQuantile(0.975));
    expect(studentTPValue(2, Number.POSITIVE_INFINITY)).toBeCloseTo(2 * normalCdf(-2), 15);
  });
  it("the density is the slope of the cdf", () => {
    expect((normalCdf(0.7 + 1e-5) - normalCdf(0.7 - 1e-5)) / 2e-5).toBeCloseTo(normalDensity(0.7), 9);
  });
  it("refuses a probability of 0 or 1 and no degrees of freedom", () => {
    expect(() => normalQuantile(1)).toThrow("normalQuantile: probability must lie between 0 and 1, got 1");
    expect(() => studentTQuantile(0.9, 0)).toThrow("degreesOfFreedom must be > 0, got 0");
    expect(() => fQuantile(0.5, 2, -1)).toThrow("both degrees of freedom must be finite and > 0");
  });
});
