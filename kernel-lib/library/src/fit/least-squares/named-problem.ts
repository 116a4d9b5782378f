import { fail } from "../../check/check";
import { levenbergMarquardt, type ResidualSolution } from "./levenberg-marquardt";

/** One parameter of a fit: where the search starts and how far it may go. */
export interface ParameterSetting {
  readonly start: number;
  /** −Infinity unless given */
  readonly lower?: number;
  /** Infinity unless given */
  readonly upper?: number;
  /** hold it at `start`; false unless given */
  readonly fixed?: boolean;
  /** "log" searches and gives its interval on the logarithm, for a parameter that must stay above zero; "plain" unless given */
  readonly scale?: "plain" | "log";
}

/** A least-squares problem in named parameters. */
export interface NamedProblem {
  /** the calling function, for error sentences */
  readonly where: string;
  readonly names: readonly string[];
  readonly settings: readonly ParameterSetting[];
  readonly residualCount: number;
  /** writes the residuals (fitted minus observed, times the root of the weight) at `values` into `out` */
  readonly residuals: (values: Record<string, number>, out: Float64Array) => void;
  /** writes the derivatives by every named parameter, one column a parameter, in the order of `names` */
  readonly jacobian?: (values: Record<string, number>, out: Float64Array) => void;
  readonly relativeStep?: number;
  readonly maxIterations?: number;
}

/** The solver's end together with what `summariseFit` needs to name it. */
export interface NamedSolution {
  readonly solution: ResidualSolution;
  /** every parameter, fixed ones too, in the order of the names */
  readonly values: readonly number[];
  /** position of each free parameter among the names */
  readonly free: readonly number[];
  /** for every parameter, the bound its value rests at */
  readonly atBound: readonly ("lower" | "upper" | null)[];
}

/** Solves a named problem: drops the fixed parameters, searches logarithms where asked, and names the result. */
export function solveNamed(problem: NamedProblem): NamedSolution {
  const { names, settings, residualCount, where } = problem;
  const free: number[] = [];
  const values: Record<string, number> = {};
  for (let j = 0; j < names.length; j++) {
    const { start, lower = Number.NEGATIVE_INFINITY, upper = Number.POSITIVE_INFINITY, fixed, scale } = settings[j];
    if (!Number.isFinite(start)) fail(`${where}: start of ${names[j]}`, "must be a finite number", start);
    if (!(lower <= upper)) fail(`${where}: bounds of ${names[j]}`, "must have lower <= upper", [lower, upper]);
    if (scale === "log" && !(start > 0)) fail(`${where}: start of ${names[j]}`, "must be > 0 on a log scale", start);
    values[names[j]] = start;
    if (!fixed) free.push(j);
  }
  const onLog = free.map((j) => settings[j].scale === "log");
  const start = new Float64Array(free.length);
  const lower = new Float64Array(free.length);
  const upper = new Float64Array(free.length);
  for (let k = 0; k < free.length; k++) {
    const setting = settings[free[k]];
    const low = setting.lower ?? Number.NEGATIVE_INFINITY;
    const high = setting.upper ?? Number.POSITIVE_INFINITY;
    start[k] = onLog[k] ? Math.log(setting.start) : setting.start;
    lower[k] = onLog[k] ? (low > 0 ? Math.log(low) : Number.NEGATIVE_INFINITY) : low;
    upper[k] = onLog[k] ? (high > 0 ? Math.log(high) : Number.POSITIVE_INFINITY) : high;
  }
  const place = (parameters: ArrayLike<number>): void => {
    for (let k = 0; k < free.length; k++) values[names[free[k]]] = onLog[k] ? Math.exp(parameters[k]) : parameters[k];
  };
  const named = problem.jacobian;
  const full = named && new Float64Array(residualCount * names.length);
  const solution = levenbergMarquardt({
    residualCount,
    start,
    lower,
    upper,
    residuals: (parameters, out) => {
      place(parameters);
      problem.residuals(values, out);
    },
    jacobian:
      named &&
      full &&
      ((parameters, out) => {
        place(parameters);
        named(values, full);
        for (let k = 0; k < free.length; k++) {
          const factor = onLog[k] ? values[names[free[k]]] : 1;
          for (let i = 0; i < residualCount; i++)
            out[k * residualCount + i] = factor * full[free[k] * residualCount + i];
        }
      }),
    relativeStep: problem.relativeStep,
    maxIterations: problem.maxIterations,
  });
  place(solution.parameters);
  const atBound = names.map((_, j): "lower" | "upper" | null => {
    const k = free.indexOf(j);
    if (k < 0) return null;
    if (solution.parameters[k] <= lower[k]) return "lower";
    return solution.parameters[k] >= upper[k] ? "upper" : null;
  });
  return { solution, values: names.map((name) => values[name]), free, atBound };
}
