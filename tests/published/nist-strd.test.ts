import { curveModel, type Fit, fitCurve, fitLinear, fitPolynomial } from "slabwright/fit";
import { describe, expect, it } from "vitest";
import { comparison } from "./comparison";
import linear from "./nist-strd/linear.json";
import { NIST_MODELS, type NistModel } from "./nist-strd/models";
import nonlinear from "./nist-strd/nonlinear.json";

const nist = (what: string, sets: string) =>
  comparison({ page: "thickness-and-crisp-time", what, against: `certified values, ${sets}`, source: SOURCE });
const SOURCE = "NIST/ITL Statistical Reference Datasets, linear and nonlinear regression";
const curved = {
  parameters: nist("parameters of `fitCurve`, numerical derivatives", "27 nonlinear sets from both starts"),
  errors: nist("standard deviations of `fitCurve`", "26 nonlinear sets from both starts"),
  residual: nist("residual standard deviation of `fitCurve`", "26 nonlinear sets from both starts"),
};
const straight = {
  parameters: nist("coefficients of `fitLinear` and `fitPolynomial`", "11 linear sets"),
  errors: nist("standard deviations of `fitLinear` and `fitPolynomial`", "11 linear sets"),
  residual: nist("residual standard deviation of `fitLinear` and `fitPolynomial`", "11 linear sets"),
};

const estimatesOf = (fit: Fit): number[] => fit.names.map((name) => fit.parameters[name].estimate);
const errorsOf = (fit: Fit): number[] => fit.names.map((name) => fit.parameters[name].standardError ?? Number.NaN);

describe("NIST StRD nonlinear sets by levenbergMarquardt, numerical derivatives, both starts", () => {
  const sets = Object.entries(nonlinear.sets);
  it("holds all 27 sets", () => expect(sets.length).toBe(27));
  for (const [name, set] of sets) {
    for (const which of ["start1", "start2"] as const) {
      it(`${name} from ${which}: 6 digits on every parameter${name === "Lanczos1" ? "" : ", 4 on standard deviations"}`, () => {
        const evaluate: NistModel = NIST_MODELS[name];
        const start = Object.fromEntries(set[which].map((value, k) => [`b${k + 1}`, value]));
        const model = curveModel<string, number | readonly number[]>({
          name,
          start,
          evaluate: (x, b) => evaluate(x, b),
        });
        const y = name === "Nelson" ? set.y.map(Math.log) : set.y;
        const fit = fitCurve(model, { x: set.x as (number | number[])[], y });
        expect(fit.converged).toBe(true);
        curved.parameters.digits(estimatesOf(fit), set.certified, 6);
        if (name === "Lanczos1") return; // its residuals, 1e-13, are the rounding of the published y: no digits to agree on
        curved.errors.digits(errorsOf(fit), set.standardDeviations, 4);
        curved.residual.digits([fit.residualSd], [set.residualSd], 6);
      });
    }
  }
});

describe("NIST StRD linear sets", () => {
  type LinearSet = {
    coefficients: number[];
    standardDeviations: number[];
    residualSd: number;
    x?: number[];
    y: number[];
    columns?: Record<string, number[]>;
  };
  const fitOf = (name: string, set: LinearSet): Fit => {
    if (name === "Longley") return fitLinear({ covariates: set.columns ?? {}, y: set.y });
    if (name.startsWith("NoInt")) return fitLinear({ covariates: { x: set.x ?? [] }, y: set.y, intercept: false });
    return fitPolynomial({ x: set.x ?? [], y: set.y, degree: set.coefficients.length - 1 });
  };
  // Coefficients, then standard deviations. Wampler4 and Wampler5 put noise 10^2 and 10^4 times the signal of Wampler3 on
  // coefficients of 1: about two digits go for each factor of 100 in the noise, 9.3 and 7.3 being what is left of 11.
  const TARGET: Record<string, readonly [number, number]> = {
    Norris: [8, 8],
    Pontius: [8, 8],
    NoInt1: [8, 8],
    NoInt2: [8, 8],
    Longley: [8, 8],
    Wampler1: [8, 8],
    Wampler2: [8, 8],
    Wampler3: [8, 8],
    Wampler4: [8, 8],
    Wampler5: [7, 8],
    Filip: [10, 10],
  };
  const sets = Object.entries(linear.sets as Record<string, LinearSet>);
  it("holds all 11 sets", () => expect(sets.map(([name]) => name).sort()).toEqual(Object.keys(TARGET).sort()));
  for (const [name, set] of sets) {
    const [coefficientDigits, errorDigits] = TARGET[name];
    it(`${name}: ${coefficientDigits} digits on coefficients, ${errorDigits} on standard deviations`, () => {
      const fit = fitOf(name, set);
      straight.parameters.digits(estimatesOf(fit), set.coefficients, coefficientDigits);
      straight.errors.digits(errorsOf(fit), set.standardDeviations, errorDigits);
      straight.residual.digits([fit.residualSd], [set.residualSd], 8);
    });
  }
});
