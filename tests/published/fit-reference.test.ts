import {
  censoredQuantile,
  curves,
  deltaMethod,
  type Estimates,
  fitCensoredTimes,
  fitCurve,
  fitOrderedScores,
  fitRobustCurve,
  fitYesNo,
  influence,
  predictOrderedScores,
  profileInterval,
  serialPattern,
  type TimeDistributionName,
  valueAtShare,
} from "slabwright/fit";
import { describe, expect, it } from "vitest";
import reference from "./fit-reference/fit-reference.json";
import nls from "./r-reference/r-reference.json";

// Reference values: R 4.2.2 with survival and MASS, made by fit-reference/make-reference.R on data invented there.

function digits(got: readonly number[], wanted: readonly number[]): number {
  expect(got.length).toBe(wanted.length);
  return Math.min(
    ...got.map((value, i) => {
      const error = Math.abs(value - wanted[i]);
      return error === 0 ? 15 : -Math.log10(error / Math.abs(wanted[i]));
    }),
  );
}
const estimates = (fit: Estimates): number[] => fit.names.map((name) => fit.parameters[name].estimate);
const errors = (fit: Estimates): number[] => fit.names.map((name) => fit.parameters[name].standardError ?? Number.NaN);

describe("times seen at checks, against survreg", () => {
  const { aft } = reference;
  const upper = aft.upper.map(Number).map((value) => (Number.isNaN(value) ? Number.POSITIVE_INFINITY : value));
  const covariates = { logThickness: aft.thick.map(Math.log), setpointC: aft.setpoint, appliance: aft.appliance };
  for (const distribution of ["logLogistic", "weibull", "lognormal"] as TimeDistributionName[]) {
    it(`${distribution}: coefficients, scale, covariance, likelihood, quantiles`, () => {
      const wanted = aft[distribution];
      const fit = fitCensoredTimes({ lower: aft.lower, upper, covariates, distribution });
      expect(fit.counts.after).toBeGreaterThan(0);
      expect(fit.counts.before).toBeGreaterThan(0);
      expect(fit.counts.exact).toBeGreaterThan(0);
      expect(digits(estimates(fit), [...wanted.coef, ...wanted.scale])).toBeGreaterThan(6);
      expect(digits([fit.logLikelihood], wanted.logLik)).toBeGreaterThan(9);
      const scale = fit.parameters.scale.estimate;
      const stretch = fit.names.map((name) => (name === "scale" ? scale : 1)); // survreg gives the covariance of log scale
      const covariance = fit.covariance.flatMap((row, i) => row.map((value, j) => value / stretch[i] / stretch[j]));
      expect(digits(covariance, wanted.cov)).toBeGreaterThan(5);
      const at = { logThickness: Math.log(10), setpointC: 195, appliance: "large" };
      const quantiles = [0.1, 0.5, 0.9].map((probability) => censoredQuantile(fit, { probability, at }));
      expect(
        digits(
          quantiles.map((one) => Math.log(one.time)),
          wanted.logQuantile,
        ),
      ).toBeGreaterThan(7);
      expect(
        digits(
          quantiles.map((one) => one.standardErrorLog),
          wanted.logQuantileSe,
        ),
      ).toBeGreaterThan(5);
    });
  }
  it("no covariates", () => {
    const fit = fitCensoredTimes({ lower: aft.lower, upper });
    expect(digits(estimates(fit), [...aft.interceptOnly.coef, ...aft.interceptOnly.scale])).toBeGreaterThan(6);
    expect(digits([fit.logLikelihood], aft.interceptOnly.logLik)).toBeGreaterThan(9);
  });
});

describe("yes/no crispness, against glm, dose.p and Fieller's roots", () => {
  const { logistic } = reference;
  it("one covariate, half and ninety per cent", () => {
    const fit = fitYesNo({ covariates: { timeMin: logistic.minutes }, yes: logistic.crisp });
    expect(digits(estimates(fit), logistic.coef)).toBeGreaterThan(8);
    expect(digits(errors(fit), logistic.se)).toBeGreaterThan(7);
    expect(digits([fit.deviance], logistic.deviance)).toBeGreaterThan(8);
    const half = valueAtShare(fit, { covariate: "timeMin" });
    const ninety = valueAtShare(fit, { covariate: "timeMin", share: 0.9 });
    expect(digits([half.value, half.standardError], logistic.half)).toBeGreaterThan(7);
    expect(digits([ninety.value, ninety.standardError], logistic.ninety)).toBeGreaterThan(7);
    expect(digits([...(half.fieller95 ?? [])], logistic.fiellerHalf)).toBeGreaterThan(7);
    expect(digits([...(ninety.fieller95 ?? [])], logistic.fiellerNinety)).toBeGreaterThan(7);
  });
  it("two covariates, covariance and AIC", () => {
    const fit = fitYesNo({
      covariates: { timeMin: logistic.minutes, thicknessMm: logistic.thick },
      yes: logistic.crisp,
    });
    expect(digits(estimates(fit), logistic.coef2)).toBeGreaterThan(8);
    expect(digits(fit.covariance.flat(), logistic.cov2)).toBeGreaterThan(7);
    expect(digits([-2 * fit.logLikelihood + 6], logistic.aic2)).toBeGreaterThan(8);
  });
  it("mtcars: engine form on weight, with R's own half point", () => {
    const wanted = nls.results.mtcars_logit;
    const fit = fitYesNo({ covariates: { wt: nls.data.mtcars.wt }, yes: nls.data.mtcars.am });
    expect(digits(estimates(fit), wanted.coef)).toBeGreaterThan(6);
    expect(digits(errors(fit), wanted.se)).toBeGreaterThan(5);
    expect(digits([valueAtShare(fit, { covariate: "wt" }).value], [wanted.wt50])).toBeGreaterThan(6);
  });
});

describe("ordered scores, against polr", () => {
  const { ordinal } = reference;
  it("coefficients, cuts, standard errors, probabilities", () => {
    const fit = fitOrderedScores({
      covariates: { timeMin: ordinal.minutes, dryer: ordinal.dryer },
      score: ordinal.score,
    });
    expect(fit.names).toEqual(["timeMin", "dryer[large]", "cut[1|2]", "cut[2|3]", "cut[3|4]"]);
    expect(digits(estimates(fit), [...ordinal.coef, ...ordinal.zeta])).toBeGreaterThan(6);
    expect(digits([fit.deviance], ordinal.deviance)).toBeGreaterThan(9);
    expect(digits(errors(fit), ordinal.se)).toBeGreaterThan(5);
    const at = predictOrderedScores(fit, { timeMin: 14, dryer: "large" });
    expect(
      digits(
        at.rows.map((row) => row.probability),
        ordinal.probabilities,
      ),
    ).toBeGreaterThan(6);
  });
});

describe("robust refits, against MASS rlm", () => {
  const { robust } = reference;
  for (const loss of ["huber", "bisquare"] as const) {
    it(`${loss}: coefficients, standard errors, scale, weights`, () => {
      const fit = fitRobustCurve(curves.line, { x: robust.x, y: robust.y }, { loss });
      expect(digits(estimates(fit), robust[loss].coef)).toBeGreaterThan(6);
      expect(digits(errors(fit), robust[loss].se)).toBeGreaterThan(5);
      expect(digits([fit.residualSd], robust[loss].scale)).toBeGreaterThan(6);
      fit.robustWeights.forEach((weight, i) => {
        expect(weight).toBeCloseTo(robust[loss].weights[i], 6);
      });
      expect(fit.notices.some((notice) => notice.startsWith("Point 10 "))).toBe(true);
      expect(fit.notices.some((notice) => notice.startsWith("Point 30 "))).toBe(true);
    });
  }
});

describe("influence, serial pattern, profile", () => {
  const { cars, puromycin_treated: puromycin } = nls.data;
  const fit = fitCurve(curves.line, { x: cars.speed, y: cars.dist });
  it("leverage, Cook's distance, studentised residuals, leave-one-out slopes of cars", () => {
    const { points } = influence(curves.line, fit);
    expect(
      digits(
        points.map((point) => point.leverage),
        reference.influence.hat,
      ),
    ).toBeGreaterThan(8);
    expect(
      digits(
        points.map((point) => point.cooksDistance),
        reference.influence.cook,
      ),
    ).toBeGreaterThan(6);
    expect(
      digits(
        points.map((point) => point.studentised),
        reference.influence.rstudent,
      ),
    ).toBeGreaterThan(6);
    const slope = fit.parameters.b;
    const without = points.map((point) => slope.estimate - point.change.b * (slope.standardError ?? 0));
    expect(digits(without, reference.influence.slopeWithout)).toBeGreaterThan(8);
  });
  it("Durbin-Watson of cars", () => {
    expect(digits([serialPattern(fit).durbinWatson], reference.influence.durbinWatson)).toBeGreaterThan(8);
  });
  it("exact profile limits of Puromycin, by uniroot on the profile", () => {
    const curve = fitCurve(curves.hyperbola, { x: puromycin.conc, y: puromycin.rate });
    const top = profileInterval(curves.hyperbola, curve, "top");
    const half = profileInterval(curves.hyperbola, curve, "half");
    expect(digits(top.interval, reference.profile.top)).toBeGreaterThan(6);
    expect(digits(half.interval, reference.profile.half)).toBeGreaterThan(6);
    expect(
      digits(
        [...top.interval, ...half.interval],
        [0, 2, 1, 3].map((k) => nls.results.puromycin_treated.profile_ci[k]),
      ),
    ).toBeGreaterThan(3);
    expect(deltaMethod(curve, ({ half: k }) => 2 * k).standardError).toBeCloseTo(2 * 0.008280949474, 7);
  });
});
