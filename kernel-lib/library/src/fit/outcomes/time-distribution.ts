import { normalCdf, normalDensity, normalQuantile } from "../../statistics/distributions/normal-distribution";

/** How log times scatter about their line. */
export type TimeDistributionName = "logLogistic" | "weibull" | "lognormal";

/** The standard law of (log t − line)/scale. */
export interface TimeDistribution {
  /** probability at or below z */
  readonly below: (z: number) => number;
  /** probability above z */
  readonly above: (z: number) => number;
  readonly density: (z: number) => number;
  readonly densitySlope: (z: number) => number;
  readonly logDensity: (z: number) => number;
  readonly logDensitySlope: (z: number) => number;
  readonly logDensityCurvature: (z: number) => number;
  readonly quantile: (probability: number) => number;
}

const logisticBelow = (z: number): number => 1 / (1 + Math.exp(-z));
const logisticDensity = (z: number): number => logisticBelow(z) * logisticBelow(-z);

/** The three laws: logistic, smallest extreme value, normal. */
export const TIME_DISTRIBUTIONS: Readonly<Record<TimeDistributionName, TimeDistribution>> = {
  logLogistic: {
    below: logisticBelow,
    above: (z) => logisticBelow(-z),
    density: logisticDensity,
    densitySlope: (z) => logisticDensity(z) * (logisticBelow(-z) - logisticBelow(z)),
    logDensity: (z) => -Math.abs(z) - 2 * Math.log1p(Math.exp(-Math.abs(z))),
    logDensitySlope: (z) => logisticBelow(-z) - logisticBelow(z),
    logDensityCurvature: (z) => -2 * logisticDensity(z),
    quantile: (probability) => Math.log(probability / (1 - probability)),
  },
  weibull: {
    below: (z) => -Math.expm1(-Math.exp(z)),
    above: (z) => Math.exp(-Math.exp(z)),
    density: (z) => Math.exp(z - Math.exp(z)),
    densitySlope: (z) => Math.exp(z - Math.exp(z)) * -Math.expm1(z),
    logDensity: (z) => z - Math.exp(z),
    logDensitySlope: (z) => -Math.expm1(z),
    logDensityCurvature: (z) => -Math.exp(z),
    quantile: (probability) => Math.log(-Math.log1p(-probability)),
  },
  lognormal: {
    below: normalCdf,
    above: (z) => normalCdf(-z),
    density: normalDensity,
    densitySlope: (z) => -z * normalDensity(z),
    logDensity: (z) => -0.5 * z * z - 0.5 * Math.log(2 * Math.PI),
    logDensitySlope: (z) => -z,
    logDensityCurvature: () => -1,
    quantile: normalQuantile,
  },
};
