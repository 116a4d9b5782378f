import { fail } from "../../check/check";
import type { Fit, Values } from "../fit";
import { type ParameterSetting, solveNamed } from "./named-problem";
import { summariseFit } from "./summarise-fit";

/** What `leastSquares` fits: named parameters and a function that returns the residuals they leave. */
export interface LeastSquaresOptions<Name extends string> {
  /** each parameter's start, or its start with bounds and whether it is fixed */
  readonly parameters: { readonly [K in Name]: number | ParameterSetting };
  /** observed minus fitted, in any number of parts joined end to end; always the same length */
  readonly residuals: (parameters: Values<Name>) => ArrayLike<number>;
  /** derivatives of the residuals: one array a parameter, in the order of `parameters`; central differences unless given */
  readonly jacobian?: (parameters: Values<Name>) => readonly ArrayLike<number>[];
  /** the residuals are already divided by their known standard deviations, so that none is estimated; false unless given */
  readonly sdKnown?: boolean;
  /** name of the model in the result; "least squares" unless given */
  readonly model?: string;
  /** step of the central differences as a share of the parameter [-]; 6.06e-6 unless given; larger for a noisy solver */
  readonly relativeStep?: number;
  /** 500 unless given */
  readonly maxIterations?: number;
}

/**
 * Nonlinear least squares over any residual function, by Levenberg–Marquardt in the form of Moré (1978): minimises
 * Σ rᵢ(parameters)². For a curve y(x) use `fitCurve`; this one joins data of several kinds in one fit. Divide each
 * kind by its standard deviation and set `sdKnown`.
 *
 * Parameters may be bounded, fixed or searched on a log scale. The covariance is s²(JᵀJ)⁻¹, with s² = rss/(n − p),
 * or 1 where `sdKnown`.
 *
 * @returns estimates with standard errors and intervals, and how the search ended
 * @example
 * const x = [1, 2, 3, 4];
 * const y = [2.1, 3.9, 6.2, 7.8];
 * const line = leastSquares({ parameters: { a: 0, b: 1 }, residuals: ({ a, b }) => x.map((xi, i) => y[i] - a - b * xi) });
 * line.parameters.b.estimate; // → 1.94
 * line.parameters.b.standardError; // → 0.090554
 *
 * Moré, J.J. (1978), "The Levenberg–Marquardt algorithm: implementation and theory", Lecture Notes in Mathematics 630.
 */
export function leastSquares<Name extends string>(options: LeastSquaresOptions<Name>): Fit<Name> {
  const where = "leastSquares";
  const names = Object.keys(options.parameters) as Name[];
  if (names.length === 0) fail(`${where}: parameters`, "must name at least one parameter", options.parameters);
  const settings = names.map((name): ParameterSetting => {
    const given: number | ParameterSetting = options.parameters[name];
    return typeof given === "number" ? { start: given } : given;
  });
  const starts = Object.fromEntries(names.map((name, j) => [name, settings[j].start])) as Values<Name>;
  const first = options.residuals(starts);
  const residualCount = first.length;
  for (let i = 0; i < residualCount; i++) {
    if (!Number.isFinite(first[i]))
      fail(`${where}: residual ${i}`, `must be finite at the start ${JSON.stringify(starts)}`, first[i]);
  }
  const free = settings.filter((setting) => !setting.fixed).length;
  const sdKnown = options.sdKnown === true;
  if (residualCount < free || (residualCount === free && !sdKnown)) {
    fail(
      `${where}: residuals`,
      `must number more than the ${free} free parameters: add observations or fix parameters`,
      residualCount,
    );
  }
  const given = options.jacobian;
  const solved = solveNamed({
    where,
    names,
    settings,
    residualCount,
    residuals: (values, out) => {
      const residuals = options.residuals(values as Values<Name>);
      if (residuals.length !== residualCount) {
        fail(`${where}: residuals`, `must keep their number, ${residualCount}`, residuals.length);
      }
      for (let i = 0; i < residualCount; i++) out[i] = residuals[i];
    },
    jacobian:
      given &&
      ((values, out) => {
        const columns = given(values as Values<Name>);
        for (let j = 0; j < names.length; j++) {
          for (let i = 0; i < residualCount; i++) out[j * residualCount + i] = columns[j][i];
        }
      }),
    relativeStep: options.relativeStep,
    maxIterations: options.maxIterations,
  });
  return summariseFit({
    model: options.model ?? "least squares",
    names,
    settings,
    solved,
    sdKnown,
    rangeX: null,
    sumLogWeights: 0,
    residuals: solved.solution.residuals,
    notices: [],
  });
}
