import { fail } from "../../check/check";
import { choleskyOrNull, solveLower } from "../../statistics/linear-algebra/cholesky";
import { dot, identity, product, times } from "../../statistics/linear-algebra/square-matrix";
import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";
import { covarianceBetween, type TargetDraws } from "./target-draws";

/** A share below this is rounding. */
const LEAST_TOLD = 1e-12;

/** What readings will have told of targets, before they are taken; matrices row by row, in the targets' units. */
export interface Learning {
  /** covariance of what will be expected of the targets after the readings */
  readonly told: Float64Array;
  /** takes a centred draw to one of what will be expected: its covariance is `told` */
  readonly tells: Float64Array;
  /** takes a centred draw to one of what will still be open: its covariance is what is left */
  readonly leaves: Float64Array;
  /** the direction that is told best, in whitened targets */
  readonly direction: readonly number[];
  /** share of the variance that is told along that direction [-] */
  readonly share: number;
}

/** What `learningFrom` works from. */
export interface LearningFromOptions {
  readonly targets: TargetDraws;
  /** one column a reading: what it would be without its own error, a value a draw */
  readonly readings: readonly ArrayLike<number>[];
  /** covariance of the errors, row by row; independent errors of variance 1 unless given */
  readonly noise?: Float64Array;
  /** the draws' means and covariances are exact, so that chance feigns no learning; default false */
  readonly matched?: boolean;
}

/**
 * What readings will tell of targets, by regression of the targets on the readings over draws of both: with C the
 * covariances, told = C_ty·(C_yy + R)⁻¹·C_yt, and left the rest. Exact where the draws are jointly normal.
 *
 * Corrected for over-fit: with e = tr[(C_yy + R)⁻¹·C_yy] readings' worth of freedom and q directions, readings that tell
 * nothing reach a share of up to g₀ = [(√e + √q)² + 2·(√e + √q)·(1/√e + 1/√q)^⅓]/(n − 1) by chance, in 99 of 100 sets of
 * draws; a share told g of random draws counts as (g − g₀)/(1 − g₀).
 *
 * @example
 * const targets = targetDraws([[-1], [0], [1]]);
 * learningFrom({ targets, readings: [[-1, 0, 1]], matched: true }).share; // → 0.5
 *
 * Reference: regression for expected values of sample information after Strong, Oakley, Brennan & Breeze (2015), Med.
 * Decis. Making 35, 570; what chance shows after Johnstone (2001), Ann. Stat. 29, 295; both from memory.
 */
export function learningFrom({ targets, readings, noise, matched = false }: LearningFromOptions): Learning {
  const { count, size } = targets;
  const measured = readings.length;
  if (measured === 0) return toldBy(targets, []);
  const centred = new Float64Array(count * measured);
  for (let column = 0; column < measured; column++) {
    const values = readings[column];
    if (values.length !== count) fail(`learningFrom: reading ${column}`, `must have ${count} draws`, values.length);
    let mean = 0;
    for (let row = 0; row < count; row++) mean += values[row] / count;
    for (let row = 0; row < count; row++) centred[row * measured + column] = values[row] - mean;
  }
  const own = covarianceBetween(centred, measured, centred, measured, count);
  const errors = noise ?? identity(measured);
  const lower = choleskyOrNull(
    own.map((value, at) => value + errors[at]),
    measured,
  );
  if (lower === null) return fail("learningFrom: noise", "must leave no reading without error", [...errors]);
  // L⁻¹·C_yt, a column a target
  const shared = covarianceBetween(targets.centred, size, centred, measured, count);
  const halves = Array.from({ length: size }, (_, at) =>
    solveLower(lower, measured, shared.slice(at * measured, (at + 1) * measured)),
  );
  let freedom = 0;
  for (let column = 0; column < measured; column++) {
    const solved = solveLower(
      lower,
      measured,
      own.slice(column * measured, (column + 1) * measured), // symmetric: a row is a column
    );
    const unit = new Float64Array(measured);
    unit[column] = 1;
    solveLower(lower, measured, unit);
    for (let k = 0; k < measured; k++) freedom += solved[k] * unit[k];
  }
  const edge = matched ? 0 : chanceEdge(freedom, targets.rank, count);
  const ways = Array.from({ length: measured }, (_, way) => Float64Array.from(halves, (half) => half[way]));
  return toldBy(targets, ways, (share) => (edge < 1 ? Math.max(0, share - edge) / (1 - edge) : 0));
}

/** The learning whose covariance of what is told is Σ w·wᵀ over the ways w of being told, before over-fit is taken off. */
function toldBy(
  targets: TargetDraws,
  ways: readonly Float64Array[],
  honest: (share: number) => number = (share) => share,
): Learning {
  const { size, root, inverseRoot } = targets;
  const whitened = ways.map((way) => times(inverseRoot, way, size));
  const { values, vectors } = symmetricEigen(whitened.map((a) => whitened.map((b) => dot(a, b))));
  const told = new Float64Array(size * size);
  const tells = new Float64Array(size * size);
  const leaves = product(root, inverseRoot, size);
  let best = { share: 0, direction: [...new Float64Array(size)] };
  for (let along = 0; along < values.length; along++) {
    const share = Math.min(1, Math.max(0, honest(values[along])));
    if (share === 0 || values[along] < LEAST_TOLD) continue;
    const unit = new Float64Array(size);
    for (let way = 0; way < ways.length; way++)
      for (let at = 0; at < size; at++)
        unit[at] += (vectors[along][way] * whitened[way][at]) / Math.sqrt(values[along]);
    if (share > best.share) best = { share, direction: [...unit] };
    const out = times(root, unit, size);
    const back = times(inverseRoot, unit, size);
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j++) {
        told[i * size + j] += share * out[i] * out[j];
        tells[i * size + j] += Math.sqrt(share) * out[i] * back[j];
        leaves[i * size + j] -= (1 - Math.sqrt(1 - share)) * out[i] * back[j];
      }
  }
  return { told, tells, leaves, ...best };
}

/** The part of a learning that follows from what is told of one target alone: told·eᵢ·eᵢᵀ·told/toldᵢᵢ. */
export function learningOfOne(targets: TargetDraws, { told }: Learning, target: number): Learning {
  const { size } = targets;
  const own = told[target * size + target];
  if (!(own > 0)) return toldBy(targets, []);
  return toldBy(targets, [Float64Array.from({ length: size }, (_, at) => told[at * size + target] / Math.sqrt(own))]);
}

/** The share that 99 of 100 sets of readings that tell nothing do not reach by chance. */
function chanceEdge(freedom: number, rank: number, count: number): number {
  if (freedom <= 0 || rank === 0) return 0;
  const [e, q] = [Math.sqrt(freedom), Math.sqrt(rank)];
  return Math.min(1, ((e + q) ** 2 + 2 * (e + q) * (1 / e + 1 / q) ** (1 / 3)) / (count - 1));
}
