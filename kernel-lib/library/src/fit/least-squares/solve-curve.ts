import type { Values } from "../fit";
import type { CurveModel } from "../models/curve-model";
import { type NamedSolution, type ParameterSetting, solveNamed } from "./named-problem";

/** How to fit the curve, beyond the points. */
export interface FitCurveOptions<Name extends string> {
  /** starting values that replace the model's own guess */
  readonly start?: { readonly [K in Name]?: number };
  /** parameters held at a value */
  readonly fixed?: { readonly [K in Name]?: number };
  /** least values, in place of the model's */
  readonly lower?: { readonly [K in Name]?: number };
  /** greatest values, in place of the model's */
  readonly upper?: { readonly [K in Name]?: number };
}

/** A search's end and the settings it ran under. */
export interface SolvedCurve {
  readonly solved: NamedSolution;
  readonly settings: readonly ParameterSetting[];
}

/** Makes a function that fits the model to any y at these x and weights from any start: what every refit calls. */
export function curveSolver<Name extends string, X>(
  where: string,
  model: CurveModel<Name, X>,
  x: readonly X[],
  weights: readonly number[],
  options: FitCurveOptions<Name>,
  maxIterations?: number,
): (y: ArrayLike<number>, start: Values<Name>) => SolvedCurve {
  const names = Object.keys(model.parameters) as Name[];
  const n = x.length;
  const roots = weights.map(Math.sqrt);
  const { evaluate, gradient } = model;
  return (y, start) => {
    const settings = names.map((name): ParameterSetting => {
      const range = model.parameters[name];
      const lower: number | undefined = options.lower?.[name];
      const upper: number | undefined = options.upper?.[name];
      const held: number | undefined = options.fixed?.[name];
      return {
        start: held ?? start[name],
        lower: lower ?? range.lower,
        upper: upper ?? range.upper,
        scale: range.scale,
        fixed: held !== undefined,
      };
    });
    const solved = solveNamed({
      where,
      names,
      settings,
      residualCount: n,
      residuals: (values, out) => {
        const parameters = values as Values<Name>;
        for (let i = 0; i < n; i++) out[i] = (evaluate(x[i], parameters) - y[i]) * roots[i];
      },
      jacobian:
        gradient &&
        ((values, out) => {
          for (let i = 0; i < n; i++) {
            const slopes = gradient(x[i], values as Values<Name>);
            for (let j = 0; j < names.length; j++) out[j * n + i] = slopes[j] * roots[i];
          }
        }),
      maxIterations,
    });
    return { solved, settings };
  };
}

/** Estimates by name from a search's end. */
export function solvedValues<Name extends string>(names: readonly Name[], { solved }: SolvedCurve): Values<Name> {
  const values = {} as Record<Name, number>;
  names.forEach((name, j) => {
    values[name] = solved.values[j];
  });
  return values;
}
