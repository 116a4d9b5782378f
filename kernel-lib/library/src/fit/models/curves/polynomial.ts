import { fail } from "../../../check/check";
import type { Values } from "../../fit";
import type { CurveModel } from "../curve-model";

/** y = b0 + b1 x + … + b_degree x^degree, for fits with bounds, fixed terms or groups; `fitPolynomial` keeps more digits. */
export function polynomial(degree: number): CurveModel<string> {
  if (!(Number.isInteger(degree) && degree >= 1 && degree <= 6)) {
    fail("curves.polynomial: degree", "must be a whole number from 1 to 6", degree);
  }
  const names = Array.from({ length: degree + 1 }, (_, k) => `b${k}`);
  return {
    name: `polynomial of degree ${degree}`,
    equation: `y = ${names.map((name, k) => (k === 0 ? name : k === 1 ? `${name} x` : `${name} x^${k}`)).join(" + ")}`,
    parameters: Object.fromEntries(names.map((name) => [name, {}])),
    evaluate: (x, parameters) => {
      let value = 0;
      for (let k = degree; k >= 0; k--) value = value * x + parameters[names[k]];
      return value;
    },
    gradient: (x) => names.map((_, k) => x ** k),
    guess: (_x, y): Values => {
      const mean = y.reduce((sum, value) => sum + value, 0) / y.length;
      return Object.fromEntries(names.map((name, k) => [name, k === 0 ? mean : 0]));
    },
  };
}
