import type { CurveModel } from "../curve-model";
import { lineThrough } from "./line-through";

/** y = a + b x. */
export const line: CurveModel<"a" | "b"> = {
  name: "line",
  equation: "y = a + b x",
  parameters: { a: {}, b: {} },
  evaluate: (x, { a, b }) => a + b * x,
  gradient: (x) => [1, x],
  guess: (x, y) => {
    const { intercept, slope } = lineThrough(x, y);
    return { a: intercept, b: slope };
  },
};
