import type { Values } from "../../fit";
import type { CurveModel } from "../curve-model";

/** y = end + (start − end) e^(−rate x): from `start` at x = 0 towards `end`. */
export const exponentialApproach: CurveModel<"end" | "start" | "rate"> = {
  name: "exponential approach",
  equation: "y = end + (start - end) e^(-rate x)",
  parameters: { end: {}, start: {}, rate: { lower: 0, scale: "log" } },
  evaluate: (x, { end, start, rate }) => end + (start - end) * Math.exp(-rate * x),
  gradient: (x, { end, start, rate }) => {
    const left = Math.exp(-rate * x);
    return [1 - left, left, -(start - end) * x * left];
  },
  guess: (x, y) => {
    const order = x.map((_, i) => i).sort((i, j) => x[i] - x[j]);
    const first = order[0];
    const last = order[order.length - 1];
    const width = x[last] - x[first] || 1;
    return [0.3, 2, 8].map(
      (turns): Values<"end" | "start" | "rate"> => ({
        end: y[last] + (y[last] - y[first]) * Math.exp(-turns),
        start: y[first],
        rate: turns / width,
      }),
    );
  },
};
