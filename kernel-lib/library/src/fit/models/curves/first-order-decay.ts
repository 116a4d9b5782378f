import type { CurveModel } from "../curve-model";
import { lineThrough } from "./line-through";

/** y = start e^(−rate x). */
export const firstOrderDecay: CurveModel<"start" | "rate"> = {
  name: "first-order decay",
  equation: "y = start e^(-rate x)",
  parameters: { start: {}, rate: {} },
  evaluate: (x, { start, rate }) => start * Math.exp(-rate * x),
  gradient: (x, { start, rate }) => {
    const left = Math.exp(-rate * x);
    return [left, -start * x * left];
  },
  guess: (x, y) => {
    const sign = y.reduce((sum, value) => sum + value, 0) < 0 ? -1 : 1;
    const usable = x.map((_, i) => i).filter((i) => sign * y[i] > 0);
    const { intercept, slope } = lineThrough(
      usable.map((i) => x[i]),
      usable.map((i) => Math.log(sign * y[i])),
    );
    return { start: sign * Math.exp(intercept), rate: -slope };
  },
};
