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
import { comparison } from "./comparison";
import reference from "./fit-reference/fit-reference.json";
import nls from "./r-reference/r-reference.json";

// Reference values: R 4.2.2 with survival and MASS, made by fit-reference/make-reference.R on data invented there.

const r = (page: "thickness-and-crisp-time" | "calibration-and-doubt", what: string, against: string) =>
  comparison({ page, what, against, source: "R Core Team, R 4.2.2, with survival 3.5-3 and MASS 7.3-58.2" });
const crisp = "thickness-and-crisp-time";
const survreg = r(
  crisp,
  "coefficients, scale, covariance, likelihood and quantiles of `fitCensoredTimes`",
  "R's survreg",
);
const dose = r(
  crisp,
  "estimates, shares and Fieller's limits of `fitYesNo` and `valueAtShare`",
  "R's glm, MASS's dose.p, Fieller's roots",
);
const polr = r(crisp, "estimates, cuts and probabilities of `fitOrderedScores`", "MASS's polr");
const rlm = r(crisp, "estimates, standard errors and scale of `fitRobustCurve`", "MASS's rlm");
const doubt = r(
  "calibration-and-doubt",
  "leverage, Cook's distance, residuals, Durbin-Watson and profile limits",
  "R's influence measures, and uniroot on the profile",
);
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
      survreg.digits(estimates(fit), [...wanted.coef, ...wanted.scale], 6);
      survreg.digits([fit.logLikelihood], wanted.logLik, 9);
      const scale = fit.parameters.scale.estimate;
      const stretch = fit.names.map((name) => (name === "scale" ? scale : 1)); // survreg gives the covariance of log scale
      const covariance = fit.covariance.flatMap((row, i) => row.map((value, j) => value / stretch[i] / stretch[j]));
      survreg.digits(covariance, wanted.cov, 5);
      const at = { logThickness: Math.log(10), setpointC: 195, appliance: "large" };
      const quantiles = [0.1, 0.5, 0.9].map((probability) => censoredQuantile(fit, { probability, at }));
      survreg.digits(
        quantiles.map((one) => Math.log(one.time)),
        wanted.logQuantile,
        7,
      );
      survreg.digits(
        quantiles.map((one) => one.standardErrorLog),
        wanted.logQuantileSe,
        5,
      );
    });
  }
  it("no covariates", () => {
    const fit = fitCensoredTimes({ lower: aft.lower, upper });
    survreg.digits(estimates(fit), [...aft.interceptOnly.coef, ...aft.interceptOnly.scale], 6);
    survreg.digits([fit.logLikelihood], aft.interceptOnly.logLik, 9);
  });
});

describe("yes/no crispness, against glm, dose.p and Fieller's roots", () => {
  const { logistic } = reference;
  it("one covariate, half and ninety per cent", () => {
    const fit = fitYesNo({ covariates: { timeMin: logistic.minutes }, yes: logistic.crisp });
    dose.digits(estimates(fit), logistic.coef, 8);
    dose.digits(errors(fit), logistic.se, 7);
    dose.digits([fit.deviance], logistic.deviance, 8);
    const half = valueAtShare(fit, { covariate: "timeMin" });
    const ninety = valueAtShare(fit, { covariate: "timeMin", share: 0.9 });
    dose.digits([half.value, half.standardError], logistic.half, 7);
    dose.digits([ninety.value, ninety.standardError], logistic.ninety, 7);
    dose.digits([...(half.fieller95 ?? [])], logistic.fiellerHalf, 7);
    dose.digits([...(ninety.fieller95 ?? [])], logistic.fiellerNinety, 7);
  });
  it("two covariates, covariance and AIC", () => {
    const fit = fitYesNo({
      covariates: { timeMin: logistic.minutes, thicknessMm: logistic.thick },
      yes: logistic.crisp,
    });
    dose.digits(estimates(fit), logistic.coef2, 8);
    dose.digits(fit.covariance.flat(), logistic.cov2, 7);
    dose.digits([-2 * fit.logLikelihood + 6], logistic.aic2, 8);
  });
  it("mtcars: engine form on weight, with R's own half point", () => {
    const wanted = nls.results.mtcars_logit;
    const fit = fitYesNo({ covariates: { wt: nls.data.mtcars.wt }, yes: nls.data.mtcars.am });
    dose.digits(estimates(fit), wanted.coef, 6);
    dose.digits(errors(fit), wanted.se, 5);
    dose.digits([valueAtShare(fit, { covariate: "wt" }).value], [wanted.wt50], 6);
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
    polr.digits(estimates(fit), [...ordinal.coef, ...ordinal.zeta], 6);
    polr.digits([fit.deviance], ordinal.deviance, 9);
    polr.digits(errors(fit), ordinal.se, 5);
    const at = predictOrderedScores(fit, { timeMin: 14, dryer: "large" });
    polr.digits(
      at.rows.map((row) => row.probability),
      ordinal.probabilities,
      6,
    );
  });
});

describe("robust refits, against MASS rlm", () => {
  const { robust } = reference;
  for (const loss of ["huber", "bisquare"] as const) {
    it(`${loss}: coefficients, standard errors, scale, weights`, () => {
      const fit = fitRobustCurve(curves.line, { x: robust.x, y: robust.y }, { loss });
      rlm.digits(estimates(fit), robust[loss].coef, 6);
      rlm.digits(errors(fit), robust[loss].se, 5);
      rlm.digits([fit.residualSd], robust[loss].scale, 6);
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
    doubt.digits(
      points.map((point) => point.leverage),
      reference.influence.hat,
      8,
    );
    doubt.digits(
      points.map((point) => point.cooksDistance),
      reference.influence.cook,
      6,
    );
    doubt.digits(
      points.map((point) => point.studentised),
      reference.influence.rstudent,
      6,
    );
    const slope = fit.parameters.b;
    const without = points.map((point) => slope.estimate - point.change.b * (slope.standardError ?? 0));
    doubt.digits(without, reference.influence.slopeWithout, 8);
  });
  it("Durbin-Watson of cars", () => {
    doubt.digits([serialPattern(fit).durbinWatson], reference.influence.durbinWatson, 8);
  });
  it("exact profile limits of Puromycin, by uniroot on the profile", () => {
    const curve = fitCurve(curves.hyperbola, { x: puromycin.conc, y: puromycin.rate });
    const top = profileInterval(curves.hyperbola, curve, "top");
    const half = profileInterval(curves.hyperbola, curve, "half");
    doubt.digits(top.interval, reference.profile.top, 6);
    doubt.digits(half.interval, reference.profile.half, 6);
    doubt.digits(
      [...top.interval, ...half.interval],
      [0, 2, 1, 3].map((k) => nls.results.puromycin_treated.profile_ci[k]),
      3,
    );
    expect(deltaMethod(curve, ({ half: k }) => 2 * k).standardError).toBeCloseTo(2 * 0.008280949474, 7);
  });
});
