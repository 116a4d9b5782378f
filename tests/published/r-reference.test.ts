import {
  type CurveFit,
  type CurveModel,
  curveModel,
  curves,
  deltaMethod,
  type Estimates,
  fitCurve,
  fitLinear,
  fitPolynomial,
  fitYesNo,
  lackOfFit,
  predictCurve,
  predictLinear,
  predictPolynomial,
} from "slabwright/fit";
import { fCdf } from "slabwright/statistics";
import { describe, expect, it } from "vitest";
import { comparison } from "./comparison";
import reference from "./r-reference/r-reference.json";

const { results, data } = reference;

const r = (what: string, against: string) =>
  comparison({ page: "thickness-and-crisp-time", what, against, source: SOURCE });
const SOURCE = "R Core Team, R 4.2.2, its datasets and its functions nls, lm, glm";
const nls = r(
  "estimates, standard errors, intervals and bands of `fitCurve`",
  "R's nls on Puromycin, Indometh, DNase, ChickWeight, Loblolly",
);
const lm = r(
  "estimates, standard errors, F, PRESS, AICc and bands of `fitLinear` and `fitPolynomial`",
  "R's lm on cars and mtcars",
);
const lack = r("sums of squares, F and p of `lackOfFit`", "R's lm and pf on cars, DNase, Puromycin");
const glm = r("estimates, covariance and deviance of `fitYesNo`", "R's glm on infert and esoph");
const estimates = (fit: Estimates): number[] => fit.names.map((name) => fit.parameters[name].estimate);
const errors = (fit: Estimates): number[] => fit.names.map((name) => fit.parameters[name].standardError ?? Number.NaN);

interface NlsReference {
  coef: number[];
  se: number[];
  cov: number[];
  wald_lo: number[];
  wald_hi: number[];
  sigma: number;
  df: number;
  rss: number;
  logLik: number;
  AICc: number;
  BIC: number;
  at?: number[];
  band?: { fit: number[]; se: number[]; ci_lo: number[]; ci_hi: number[]; pi_lo: number[]; pi_hi: number[] };
}

function agrees<Name extends string>(
  model: CurveModel<Name>,
  fit: CurveFit<Name>,
  wanted: NlsReference,
  toX: (at: number) => number = (at) => at,
): void {
  expect(fit.converged).toBe(true);
  expect(fit.degreesOfFreedom).toBe(wanted.df);
  nls.digits(estimates(fit), wanted.coef, 6);
  nls.digits(errors(fit), wanted.se, 5);
  nls.digits(fit.covariance.flat(), wanted.cov, 5);
  const intervals = fit.names.map((name) => fit.parameters[name].interval95 ?? [Number.NaN, Number.NaN]);
  nls.digits(
    intervals.map(([low]) => low),
    wanted.wald_lo,
    5,
  );
  nls.digits(
    intervals.map(([, high]) => high),
    wanted.wald_hi,
    5,
  );
  nls.digits([fit.residualSd, fit.rss], [wanted.sigma, wanted.rss], 6);
  nls.digits([fit.logLikelihood, fit.aicc, fit.bic], [wanted.logLik, wanted.AICc, wanted.BIC], 6);
  if (!wanted.band || !wanted.at) return;
  const at = wanted.at.map((x) => predictCurve(model, fit, toX(x)));
  nls.digits(
    at.map((one) => one.value),
    wanted.band.fit,
    6,
  );
  nls.digits(
    at.map((one) => one.standardError),
    wanted.band.se,
    5,
  );
  nls.digits(
    at.map((one) => one.confidence95[0]),
    wanted.band.ci_lo,
    5,
  );
  nls.digits(
    at.map((one) => one.confidence95[1]),
    wanted.band.ci_hi,
    5,
  );
  nls.digits(
    at.map((one) => one.prediction95[0]),
    wanted.band.pi_lo,
    5,
  );
  nls.digits(
    at.map((one) => one.prediction95[1]),
    wanted.band.pi_hi,
    5,
  );
}

const THREE_LOGISTIC = curveModel({
  name: "logistic of three",
  evaluate: (x, { Asym, xmid, scal }) => Asym / (1 + Math.exp((xmid - x) / scal)),
  start: { Asym: 2, xmid: 1, scal: 1 },
});

describe("nls of R 4.2.2: 6 digits on estimates, 5 on standard errors and bands", () => {
  it("Puromycin, both groups (Michaelis-Menten)", () => {
    for (const [group, wanted] of [
      [data.puromycin_treated, results.puromycin_treated],
      [data.puromycin_untreated, results.puromycin_untreated],
    ] as const) {
      agrees(curves.hyperbola, fitCurve(curves.hyperbola, { x: group.conc, y: group.rate }), wanted);
    }
  });
  it("Indometh subject 1 (two exponentials)", () => {
    const model = curveModel({
      name: "two exponentials",
      evaluate: (t, { A1, l1, A2, l2 }) => A1 * Math.exp(-Math.exp(l1) * t) + A2 * Math.exp(-Math.exp(l2) * t),
      start: { A1: 2, l1: 0.5, A2: 0.2, l2: -1.5 },
    });
    agrees(model, fitCurve(model, { x: data.indometh_s1.time, y: data.indometh_s1.conc }), results.indometh_s1_biexp);
  });
  it("DNase run 1 (logistic in log concentration)", () => {
    const x = data.dnase1.conc.map(Math.log);
    const fit = fitCurve(THREE_LOGISTIC, { x, y: data.dnase1.density });
    agrees(THREE_LOGISTIC, fit, results.dnase1_logistic, Math.log);
    const ready = fitCurve(curves.logistic, { x, y: data.dnase1.density }, { fixed: { bottom: 0 } });
    nls.digits(estimates(ready).slice(1), results.dnase1_logistic.coef, 6);
    nls.digits(errors(ready).slice(1), results.dnase1_logistic.se, 5);
  });
  it("ChickWeight chick 1 (logistic whose top is barely told), from the model's own guess", () => {
    const fit = fitCurve(curves.logistic, { x: data.chick1.Time, y: data.chick1.weight }, { fixed: { bottom: 0 } });
    nls.digits(estimates(fit).slice(1), results.chick1_logistic.coef, 6);
    nls.digits(errors(fit).slice(1), results.chick1_logistic.se, 5);
    expect(fit.notices.join(" ")).toContain("scarcely tell them apart");
  });
  it("Loblolly 301 (exponential approach; R's lrc is the logarithm of our rate)", () => {
    const wanted = results.loblolly301_asymp;
    const fit = fitCurve(curves.exponentialApproach, { x: data.loblolly301.age, y: data.loblolly301.height });
    const lrc = deltaMethod(fit, ({ rate }) => Math.log(rate));
    nls.digits([fit.parameters.end.estimate, fit.parameters.start.estimate, lrc.value], wanted.coef, 6);
    const own = [fit.parameters.end.standardError, fit.parameters.start.standardError, lrc.standardError] as number[];
    nls.digits(own, wanted.se, 5);
    const [low, high] = fit.parameters.rate.interval95 ?? [0, 0];
    nls.digits([Math.log(low), Math.log(high)], [wanted.wald_lo[2], wanted.wald_hi[2]], 5);
  });
});

describe("lm of R 4.2.2", () => {
  it("cars, straight line: estimates, R squared, F, PRESS, bands", () => {
    const wanted = results.cars_linear;
    const fit = fitLinear({ covariates: { speed: data.cars.speed }, y: data.cars.dist });
    lm.digits(estimates(fit), wanted.coef, 8);
    lm.digits(errors(fit), wanted.se, 8);
    lm.digits(
      [fit.rSquared, fit.adjustedRSquared, fit.fStatistic, fit.press, fit.rss, fit.aicc, fit.bic, fit.residualSd],
      [wanted.r2, wanted.adjr2, wanted.F, wanted.press, wanted.rss, wanted.AICc, wanted.BIC, wanted.sigma],
      8,
    );
    const at = wanted.at.map((speed) => predictLinear(fit, { speed }));
    lm.digits(
      at.map((one) => one.value),
      wanted.pred,
      8,
    );
    lm.digits(
      at.map((one) => one.standardError),
      wanted.pred_se,
      8,
    );
    lm.digits(
      at.map((one) => one.confidence95[0]),
      wanted.cilo,
      8,
    );
    lm.digits(
      at.map((one) => one.prediction95[1]),
      wanted.pihi,
      8,
    );
  });
  it("cars, quadratic: by polynomial, by curve and by columns", () => {
    const wanted = results.cars_quadratic;
    const { speed, dist } = data.cars;
    const polynomial = fitPolynomial({ x: speed, y: dist, degree: 2 });
    const curve = fitCurve(curves.polynomial(2), { x: speed, y: dist });
    const columns = fitLinear({ covariates: { speed, square: speed.map((v) => v * v) }, y: dist });
    for (const fit of [polynomial, curve, columns]) {
      lm.digits(estimates(fit), wanted.coef, 8);
      lm.digits(errors(fit), wanted.se, 8);
      lm.digits([fit.aicc], [wanted.AICc], 8);
    }
    const at = wanted.at.map((x) => predictPolynomial(polynomial, x));
    lm.digits(
      at.map((one) => one.standardError),
      wanted.pred_se,
      8,
    );
    lm.digits(
      at.map((one) => one.prediction95[0]),
      wanted.pilo,
      8,
    );
  });
  it("mtcars on weight and power", () => {
    const wanted = results.mtcars_wt_hp;
    const fit = fitLinear({ covariates: { wt: data.mtcars.wt, hp: data.mtcars.hp }, y: data.mtcars.mpg });
    lm.digits(estimates(fit), wanted.coef, 8);
    lm.digits(errors(fit), wanted.se, 8);
    lm.digits([fit.press, fit.fStatistic], [wanted.press, wanted.F], 8);
  });
});

describe("lack of fit", () => {
  it("cars, DNase, Puromycin against R", () => {
    const cases = [
      [lackOfFit(fitCurve(curves.line, { x: data.cars.speed, y: data.cars.dist })), results.cars_lof],
      [
        lackOfFit(fitCurve(curves.hyperbola, { x: data.puromycin_treated.conc, y: data.puromycin_treated.rate })),
        results.puromycin_lof,
      ],
      [
        lackOfFit(fitCurve(THREE_LOGISTIC, { x: data.dnase1.conc.map(Math.log), y: data.dnase1.density })),
        results.dnase1_lof,
      ],
    ] as const;
    for (const [test, wanted] of cases) {
      expect([test.pureErrorDf, test.lackOfFitDf]).toEqual([wanted.dfpe, wanted.dflf]);
      lack.digits(
        [test.pureErrorSs, test.lackOfFitSs, test.f, test.pValue],
        [wanted.sspe, wanted.sslf, wanted.F, wanted.p],
        6,
      );
    }
  });
  it("the p value is the F distribution's", () => {
    const { F, p, dflf, dfpe } = results.cars_lof;
    expect(1 - fCdf(F, dflf, dfpe)).toBeCloseTo(p, 9);
  });
});

describe("glm of R 4.2.2", () => {
  it("infert: case on spontaneous and induced", () => {
    const wanted = results.infert_logit;
    const { case: yes, spontaneous, induced } = data.infert;
    const fit = fitYesNo({ covariates: { spontaneous, induced }, yes });
    glm.digits(estimates(fit), wanted.coef, 6);
    glm.digits(errors(fit), wanted.se, 5);
    glm.digits([fit.deviance], [wanted.deviance], 8);
  });
  it("esoph: cases counted out of cases and controls, with R's AIC", () => {
    const wanted = results.esoph_logit_alc;
    const { alcohol, cases, controls } = data.esoph;
    const fit = fitYesNo({ covariates: { alcohol }, yes: cases, of: cases.map((count, i) => count + controls[i]) });
    glm.digits(estimates(fit), wanted.coef, 6);
    glm.digits(fit.covariance.flat(), wanted.cov, 5);
    glm.digits([fit.deviance, -2 * fit.logLikelihood + 4], [wanted.deviance, wanted.AIC], 8);
  });
});
