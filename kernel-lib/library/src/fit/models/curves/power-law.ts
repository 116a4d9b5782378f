import type { CurveModel } from "../curve-model";
import { lineThrough } from "./line-through";

/** y = a x^p for x > 0; a is the value at x = 1. */
export const powerLaw: CurveModel<"a" | "p"> = {
  name: "power law",
  equation: "y = a x^p",
  parameters: { a: {}, p: {} },
  evaluate: (x, { a, p }) => a * x ** p,
  gradient: (x, { a, p }) => [x ** p, x > 0 ? a * x ** p * Math.log(x) : 0],
  guess: (x, y) => {
    const sign = y.reduce((sum, value) => sum + value, 0) < 0 ? -1 : 1;
    const usable = x.map((_, i) => i).filter((i) => x[i] > 0 && sign * y[i] > 0);
    const { intercept, slope } = lineThrough(
      usable.map((i) => Math.log(x[i])),
      usable.map((i) => Math.log(sign * y[i])),
    );
    return { a: sign * Math.exp(intercept), p: slope };
  },
};
