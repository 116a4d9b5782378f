import type { CalibratedConstant, CrispCalibration } from "./calibrate-crisp";
import type { CrispPrior } from "./crisp-priors";

/** How far the same appliance differs from one product to the next: a factor, or a share; our judgement. */
const BETWEEN = { log: Math.log(1.08), plain: 0.05 };

/**
 * Priors for what belongs to the appliances, the load and the turn, from calibrations of other products in the same
 * kitchen: each constant that their trials tell of, weighted by how well they do.
 *
 * With estimates xᵢ of variance vᵢ (on the logarithm where the constant has one) and a spread τ between products, each
 * weighs wᵢ = 1/(vᵢ + τ²). Every one of k products was calibrated with the generic prior (x₀, v₀) in it, which must count
 * once, so k − 1 of its weights w₀ = 1/(v₀ + τ²) are taken off: W = Σwᵢ − (k − 1)w₀, mean (Σwᵢxᵢ − (k − 1)w₀x₀)/W, variance
 * 1/W + τ². A product whose trials say nothing then changes nothing. τ is 8 %, or 0.05 for a share (our judgement).
 *
 * @param others calibrations with the names of their products
 * @returns priors to give to `calibrateCrisp`; none for a constant that no other product tells of
 */
export function borrowedPriors(
  others: readonly { readonly name: string; readonly calibration: CrispCalibration }[],
): readonly CrispPrior[] {
  const told = others.flatMap(({ name, calibration }) =>
    calibration.constants.flatMap((constant, at) =>
      isShared(constant) && constant.dataShare >= 0.5
        ? [{ name, constant, sd: Math.sqrt(calibration.covariance[at][at]) }]
        : [],
    ),
  );
  const names = [...new Set(told.map(({ constant }) => constant.name))];
  return Object.freeze(
    names.map((constantName): CrispPrior => {
      const own = told.filter(({ constant }) => constant.name === constantName);
      const { prior } = own[0].constant;
      const onLog = prior.scale === "log";
      const between = BETWEEN[prior.scale];
      const unitOf = ({ spread }: CrispPrior): number => (onLog ? Math.log(spread) : spread);
      const again = (own.length - 1) / (unitOf(prior) ** 2 + between ** 2);
      let weights = -again;
      let sum = -again * (onLog ? Math.log(prior.middle) : prior.middle);
      for (const { constant, sd } of own) {
        const weight = 1 / ((unitOf(constant.prior) * sd) ** 2 + between ** 2);
        weights += weight;
        sum += weight * (onLog ? Math.log(constant.estimate) : constant.estimate);
      }
      const mean = sum / weights;
      const spread = Math.sqrt(1 / weights + between ** 2);
      return {
        ...prior,
        middle: onLog ? Math.exp(mean) : mean,
        spread: onLog ? Math.exp(spread) : spread,
        from: `the trials of ${own.map(({ name }) => name).join(", ")} in this kitchen`,
      };
    }),
  );
}

function isShared({ name }: CalibratedConstant): boolean {
  return name.startsWith("coefficient:") || name === "loadLoss" || name === "turnGain";
}
