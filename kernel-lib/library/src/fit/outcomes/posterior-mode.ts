import { positive } from "../../check/check";
import type { Fit, Values } from "../fit";
import { leastSquares } from "../least-squares/least-squares";
import type { ParameterSetting } from "../least-squares/named-problem";

/** A normal prior: what was believed of a parameter before these data. */
export interface NormalPrior {
  readonly mean: number;
  readonly sd: number;
}

/** What `posteriorMode` fits. */
export interface PosteriorModeOptions<Name extends string> {
  /** each parameter's start, or its start with bounds and whether it is fixed */
  readonly parameters: { readonly [K in Name]: number | ParameterSetting };
  /** normal priors for some or all parameters, in the parameter's own unit */
  readonly priors: { readonly [K in Name]?: NormalPrior };
  /** observed minus fitted, each divided by its known standard deviation */
  readonly residuals: (parameters: Values<Name>) => ArrayLike<number>;
  /** name of the model in the result; "posterior mode" unless given */
  readonly model?: string;
  /** step of the central differences as a share of the parameter [-]; 6.06e-6 unless given */
  readonly relativeStep?: number;
}

/** A posterior mode, with how much of each parameter's precision came from the data. */
export interface PosteriorMode<Name extends string = string> extends Fit<Name> {
  /** 1 − (posterior sd / prior sd)² [-]: 0 when the data say nothing, near 1 when they say all; null without a prior */
  readonly dataShare: { readonly [K in Name]: number | null };
}

/**
 * The most probable parameters under normal errors of known size and normal priors (Gelman et al., Bayesian Data
 * Analysis, ch. 4): minimises Σ rᵢ² + Σ ((θⱼ − meanⱼ)/sdⱼ)². The covariance is the normal approximation at the mode.
 * The result's `n`, residuals and criteria count the priors as observations.
 *
 * @example
 * const pulled = posteriorMode({ parameters: { h: 30 }, priors: { h: { mean: 40, sd: 10 } }, residuals: ({ h }) => [(50 - h) / 5] });
 * pulled.parameters.h.estimate; // → 48
 * pulled.parameters.h.standardError; // → 4.4721
 * pulled.dataShare.h; // → 0.8
 */
export function posteriorMode<Name extends string>(options: PosteriorModeOptions<Name>): PosteriorMode<Name> {
  const names = Object.keys(options.parameters) as Name[];
  const priors = names.flatMap((name) => {
    const prior: NormalPrior | undefined = options.priors[name];
    return prior ? [{ name, mean: prior.mean, sd: positive(prior.sd, `posteriorMode: prior sd of ${name}`, "") }] : [];
  });
  const fit = leastSquares<Name>({
    parameters: options.parameters,
    sdKnown: true,
    model: options.model ?? "posterior mode",
    relativeStep: options.relativeStep,
    residuals: (parameters) => [
      ...Array.from(options.residuals(parameters)),
      ...priors.map(({ name, mean, sd }) => (mean - parameters[name]) / sd),
    ],
  });
  const dataShare = {} as Record<Name, number | null>;
  for (const name of names) {
    const prior = priors.find((one) => one.name === name);
    const se = fit.parameters[name].standardError;
    dataShare[name] = prior && se !== null ? 1 - (se / prior.sd) ** 2 : null;
  }
  return Object.freeze({ ...fit, dataShare: Object.freeze(dataShare) });
}
