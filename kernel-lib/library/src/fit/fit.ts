/** Numbers by parameter name. */
export type Values<Name extends string = string> = { readonly [K in Name]: number };

/** What a fit says of one parameter. */
export interface ParameterEstimate {
  readonly estimate: number;
  /** null when the parameter was fixed, rests at a bound, or the data leave it undetermined (a notice says which) */
  readonly standardError: number | null;
  /** Wald 95 % interval, cut off at the parameter's bounds; null with the standard error */
  readonly interval95: readonly [number, number] | null;
  /** the bound that the estimate rests at */
  readonly atBound: "lower" | "upper" | null;
  /** held at this value by the caller, not estimated */
  readonly fixed: boolean;
}

/** What every fit carries, whatever its kind: estimates with their doubt, and how it ended. Plain frozen data. */
export interface Estimates<Name extends string = string> {
  readonly kind: "fit";
  /** the model's name */
  readonly model: string;
  /** in the order of `covariance` and `correlation` */
  readonly names: readonly Name[];
  readonly parameters: { readonly [K in Name]: ParameterEstimate };
  /** zero rows and columns for parameters that have no standard error */
  readonly covariance: readonly (readonly number[])[];
  readonly correlation: readonly (readonly number[])[];
  /** observations */
  readonly n: number;
  /** observations minus free parameters, one that rests at a bound among them, as it was free to leave it */
  readonly degreesOfFreedom: number;
  /** the scatter was known or is set by the likelihood, so intervals use the normal in place of Student's t */
  readonly sdKnown: boolean;
  /** least and greatest x of the data; null when the fit has no single x */
  readonly rangeX: readonly [number, number] | null;
  readonly logLikelihood: number;
  /**
   * smaller is better; Infinity when there are too few observations to correct for their number. A parameter that rests at a
   * bound does not count, here and in `bic`
   */
  readonly aicc: number;
  readonly bic: number;
  readonly converged: boolean;
  /** how the search ended, in words */
  readonly reason: string;
  readonly iterations: number;
  /** sentences a reader must see: bounds, undetermined parameters, strong correlation, outliers */
  readonly notices: readonly string[];
}

/** A fit by least squares. */
export interface Fit<Name extends string = string> extends Estimates<Name> {
  /** residual sum of squares, weighted */
  readonly rss: number;
  /** square root of rss over degrees of freedom */
  readonly residualSd: number;
  /** observed minus fitted, unweighted; for a residual function of one's own, as it returned them */
  readonly residuals: readonly number[];
  /** share of itself that each observation puts into its own fitted value [-], 0 to 1 */
  readonly leverage: readonly number[];
  /** largest over smallest singular value of the derivatives, each column scaled to length 1 [-] */
  readonly conditionNumber: number;
}
