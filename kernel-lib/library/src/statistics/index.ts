// distributions

export { chiSquaredCdf, chiSquaredPValue, chiSquaredQuantile } from "./distributions/chi-squared-distribution";
export { fCdf, fPValue, fQuantile } from "./distributions/f-distribution";
export { noncentralFCdf, noncentralTCdf } from "./distributions/noncentral-distributions";
export { normalCdf, normalDensity, normalQuantile } from "./distributions/normal-distribution";
export { studentTCdf, studentTPValue, studentTQuantile } from "./distributions/student-t-distribution";

// linear algebra

export { type SymmetricEigen, symmetricEigen } from "./linear-algebra/symmetric-eigen";

// random draws from a seed

export { type MonteCarloOptions, type MonteCarloResult, monteCarlo } from "./random/monte-carlo";
export { type SeededRandom, seededRandom } from "./random/seeded-random";

// uncertainty: from inputs to a result

export { type Propagated, type PropagateOptions, propagateUncertainty } from "./uncertainty/propagate-uncertainty";
export { rectangularInput, triangularInput, type UncertainInput } from "./uncertainty/uncertain-input";

// agreement of judges

export {
  type Correlation,
  type IntraclassCorrelation,
  intraclassCorrelation,
} from "./agreement/intraclass-correlation";
export { type JudgeLevels, judgeLevels, judgesAreJoined, type Level, type Score } from "./agreement/judge-levels";
export { type Concordance, kendallW } from "./agreement/kendall-w";
