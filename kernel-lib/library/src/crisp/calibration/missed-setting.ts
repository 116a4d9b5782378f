import { inverseFrom } from "../../statistics/linear-algebra/cholesky";
import { dot } from "../../statistics/linear-algebra/square-matrix";
import type { CrispCalibration } from "./calibrate-crisp";
import { crispResiduals } from "./crisp-residuals";
import { settingGroup, sharedCovariance } from "./shared-covariance";

/** The clocks that miss a setting, in this order: core, crust, browning. */
export const MISSED_CLOCKS = ["core", "crust", "brown"] as const;

/** What a log has told of the clocks' misses at a setting that it holds, each in standard deviations of the miss. */
export interface MissedSetting {
  /** by how much each miss is expected to differ where a constant lies a prior standard deviation above the mode */
  readonly byConstant: readonly (readonly number[])[];
  /** covariance of the misses once the constants are known */
  readonly left: readonly (readonly number[])[];
}

/** A step for slopes over a prior standard deviation. */
const STEP = 1e-3;
const KNOWN = new WeakMap<CrispCalibration, ReadonlyMap<string, MissedSetting>>();

/**
 * What the trials of a calibration told of the clocks' misses at one of their settings (`settingGroup`); `null` where none
 * was logged there. A further trial there shares these misses with them, and tells the less of the constants.
 *
 * With r = r₀ + J·δ the residuals for constants δ from the mode, Σ their covariance and D the effects of the misses:
 * E[e | δ] = −Dᵀ·Σ⁻¹·r, cov(e | δ) = I − Dᵀ·Σ⁻¹·D.
 */
export function missedSetting(
  calibration: CrispCalibration,
  place: Parameters<typeof settingGroup>[0],
): MissedSetting | null {
  const known = KNOWN.get(calibration) ?? missedSettings(calibration);
  KNOWN.set(calibration, known);
  return known.get(settingGroup(place)) ?? null;
}

function missedSettings(calibration: CrispCalibration): ReadonlyMap<string, MissedSetting> {
  const { food, observations, applianceIds, constants, coatingMm, unevenness, mode, noise } = calibration;
  const problem = crispResiduals({
    food,
    observations,
    applianceIds,
    priors: constants.map(({ prior }) => prior),
    coatingMm: coatingMm ?? Number.POSITIVE_INFINITY,
    unevenness,
  });
  const { slots } = problem;
  const size = slots.length;
  if (size === 0) return new Map();
  const effects = problem.effectsAt(mode, noise);
  const inverse = inverseFrom(sharedCovariance(problem, effects, noise).lower, size);
  const here = problem.residualsAt(mode, noise);
  const slopes = mode.map((_, constant) => {
    const there = problem.residualsAt(
      mode.map((value, at) => (at === constant ? value + STEP : value)),
      noise,
    );
    return there.map((value, at) => (value - here[at]) / STEP);
  });
  const places = new Map<string, number[]>();
  for (let slot = 0; slot < size; slot++) {
    const group = settingGroup(observations[slots[slot].trial]);
    places.set(group, [...(places.get(group) ?? []), slot]);
  }
  return new Map(
    [...places].map(([group, own]) => {
      const weighted = MISSED_CLOCKS.map((clock) => {
        const weights = new Float64Array(size);
        for (const slot of own)
          for (let at = 0; at < size; at++) weights[at] += effects[clock][slot] * inverse[slot * size + at];
        return weights;
      });
      return [
        group,
        {
          byConstant: weighted.map((weights) => slopes.map((slope) => -dot(weights, slope))),
          left: weighted.map((weights, row) =>
            MISSED_CLOCKS.map(
              (clock, column) =>
                (row === column ? 1 : 0) - own.reduce((sum, slot) => sum + weights[slot] * effects[clock][slot], 0),
            ),
          ),
        },
      ];
    }),
  );
}
