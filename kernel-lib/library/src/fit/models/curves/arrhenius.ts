import { finite } from "../../../check/check";
import type { CurveModel } from "../curve-model";
import { lineThrough } from "./line-through";

/** J/(mol K), CODATA 2018, exact. */
const GAS_CONSTANT = 8.31446261815324;
const CELSIUS_ZERO_K = 273.15;

/**
 * Arrhenius law about a reference temperature: y = rate e^(−(E/R)(1/T − 1/Tref)), x in °C, E = `activationKJ` in kJ/mol,
 * `rate` the value at the reference. Taking a reference inside the data keeps the two parameters apart.
 */
export function arrhenius(options: { readonly referenceC: number }): CurveModel<"rate" | "activationKJ"> {
  const { referenceC } = options;
  finite(referenceC, "curves.arrhenius: referenceC", "°C");
  const inverse = (x: number): number => 1 / (x + CELSIUS_ZERO_K) - 1 / (referenceC + CELSIUS_ZERO_K);
  return {
    name: `Arrhenius about ${referenceC} C`,
    equation: `y = rate e^(-(E/R)(1/T - 1/Tref)), Tref ${referenceC} C`,
    parameters: { rate: { lower: 0, scale: "log" }, activationKJ: {} },
    evaluate: (x, { rate, activationKJ }) => rate * Math.exp(((-1000 * activationKJ) / GAS_CONSTANT) * inverse(x)),
    gradient: (x, { rate, activationKJ }) => {
      const shape = Math.exp(((-1000 * activationKJ) / GAS_CONSTANT) * inverse(x));
      return [shape, ((-1000 * rate) / GAS_CONSTANT) * inverse(x) * shape];
    },
    guess: (x, y) => {
      const usable = x.map((_, i) => i).filter((i) => y[i] > 0);
      const { intercept, slope } = lineThrough(
        usable.map((i) => inverse(x[i])),
        usable.map((i) => Math.log(y[i])),
      );
      return { rate: Math.exp(intercept), activationKJ: (-slope * GAS_CONSTANT) / 1000 };
    },
  };
}
