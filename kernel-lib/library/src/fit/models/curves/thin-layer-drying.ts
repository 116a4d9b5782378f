import { largestOf } from "../../../statistics/extremes";
import type { CurveModel } from "../curve-model";
import { firstOrderDecay } from "./first-order-decay";
import { lineThrough } from "./line-through";

/** Thin-layer drying after Lewis (1921): moisture ratio y = e^(−rate x). */
export const lewis: CurveModel<"rate"> = {
  name: "Lewis drying",
  equation: "y = e^(-rate x)",
  parameters: { rate: { lower: 0 } },
  evaluate: (x, { rate }) => Math.exp(-rate * x),
  gradient: (x, { rate }) => [-x * Math.exp(-rate * x)],
  guess: (x, y) => ({ rate: startingRate(x, y) }),
};

/** Thin-layer drying after Page (1949): moisture ratio y = e^(−rate x^power). */
export const page: CurveModel<"rate" | "power"> = {
  name: "Page drying",
  equation: "y = e^(-rate x^power)",
  parameters: { rate: { lower: 0, scale: "log" }, power: { lower: 0, scale: "log" } },
  evaluate: (x, { rate, power }) => Math.exp(-rate * x ** power),
  gradient: (x, { rate, power }) => {
    if (x === 0) return [0, 0];
    const raised = x ** power;
    const left = Math.exp(-rate * raised);
    return [-raised * left, -rate * raised * Math.log(x) * left];
  },
  guess: (x, y) => {
    const usable = x.map((_, i) => i).filter((i) => x[i] > 0 && y[i] > 0 && y[i] < 1);
    if (usable.length < 2) return { rate: startingRate(x, y), power: 1 };
    const { intercept, slope } = lineThrough(
      usable.map((i) => Math.log(x[i])),
      usable.map((i) => Math.log(-Math.log(y[i]))),
    );
    return { rate: Math.exp(intercept), power: Math.max(0.05, slope) };
  },
};

/** Thin-layer drying after Henderson & Pabis (1961): moisture ratio y = start e^(−rate x). */
export const hendersonPabis: CurveModel<"start" | "rate"> = {
  ...firstOrderDecay,
  name: "Henderson-Pabis drying",
  parameters: { start: { lower: 0 }, rate: { lower: 0 } },
  guess: (x, y) => ({ start: 1, rate: startingRate(x, y) }),
};

function startingRate(x: readonly number[], y: readonly number[]): number {
  const usable = x.map((_, i) => i).filter((i) => y[i] > 0);
  const { slope } = lineThrough(
    usable.map((i) => x[i]),
    usable.map((i) => Math.log(y[i])),
  );
  return slope < 0 ? -slope : 1 / largestOf(x);
}
