import { largestOf } from "../../../statistics/extremes";
import type { CurveModel } from "../curve-model";
import { lineThrough } from "./line-through";

/** Michaelis–Menten hyperbola y = top x/(half + x): rises towards `top`, and is at half of it at x = `half`. */
export const hyperbola: CurveModel<"top" | "half"> = {
  name: "hyperbola",
  equation: "y = top x/(half + x)",
  parameters: { top: {}, half: { lower: 0 } },
  evaluate: (x, { top, half }) => (top * x) / (half + x),
  gradient: (x, { top, half }) => [x / (half + x), (-top * x) / (half + x) ** 2],
  guess: (x, y) => {
    const usable = x.map((_, i) => i).filter((i) => x[i] !== 0 && y[i] !== 0);
    const { intercept, slope } = lineThrough(
      usable.map((i) => x[i]),
      usable.map((i) => x[i] / y[i]),
    );
    const top = slope === 0 ? largestOf(y) : 1 / slope;
    return { top, half: Math.max(1e-3 * largestOf(x), intercept * top) };
  },
};
