import type { SeededRandom } from "slabwright/statistics";

/** What was seen at a place. */
export interface Observed {
  readonly at: readonly number[];
  readonly value: number;
}

/** Of a share of good pieces over the logarithm of time; the scales are chosen by the likelihood of what was seen. */
const MEAN = 0.4;
const SPREAD = 0.4;
const SCALES = [0.12, 0.2, 0.33] as const;
const NOISES = [0.1, 0.2, 0.35] as const;
const DRAWS = 200;

/**
 * The place with the greatest noisy expected improvement under a Gaussian process with a squared-exponential kernel: over draws of the
 * true values at the places seen, the mean of (f(x) − their best)⁺ (Rasmussen & Williams 2006, ch. 2 and 5; Letham et al.
 * 2019, both from memory). Without anything seen, the middle.
 */
export function expectedImprovement(options: {
  readonly seen: readonly Observed[];
  readonly places: readonly (readonly number[])[];
  readonly random: SeededRandom;
}): readonly number[] {
  const { seen, places, random } = options;
  if (seen.length === 0) return places[0].map(() => 0);
  const { scale, noise } = likeliest(seen);
  const all = [...seen.map(({ at }) => at), ...places];
  const { mean, covariance } = posterior(seen, all, scale, noise);
  const lower = cholesky(covariance.map((row, i) => row.map((value, j) => value + (i === j ? 1e-6 : 0))));
  const gain = new Float64Array(places.length);
  for (let draw = 0; draw < DRAWS; draw++) {
    const z = all.map(() => random.normal());
    const f = mean.map((middle, i) =>
      lower[i].reduce((sum, weight, j) => (j <= i ? sum + weight * z[j] : sum), middle),
    );
    const best = seen.reduce((most, _, i) => Math.max(most, f[i]), Number.NEGATIVE_INFINITY);
    for (let at = 0; at < places.length; at++) gain[at] += Math.max(0, f[seen.length + at] - best) / DRAWS;
  }
  return places[gain.indexOf(gain.reduce((most, one) => Math.max(most, one), 0))];
}

const kernel = (one: readonly number[], other: readonly number[], scale: number): number =>
  SPREAD ** 2 * Math.exp(-one.reduce((sum, x, at) => sum + (x - other[at]) ** 2, 0) / (2 * scale ** 2));

/** Posterior mean and covariance of a process at places, given what was seen. */
export function posterior(
  seen: readonly Observed[],
  places: readonly (readonly number[])[],
  scale: number,
  noise: number,
): { readonly mean: readonly number[]; readonly covariance: readonly (readonly number[])[] } {
  const lower = cholesky(gram(seen, scale, noise));
  const weights = solved(
    lower,
    seen.map(({ value }) => value - MEAN),
  );
  const across = places.map((place) =>
    solved(
      lower,
      seen.map(({ at }) => kernel(place, at, scale)),
    ),
  );
  return {
    mean: across.map((row) => MEAN + dot(row, weights)),
    covariance: places.map((one, i) => places.map((other, j) => kernel(one, other, scale) - dot(across[i], across[j]))),
  };
}

function gram(seen: readonly Observed[], scale: number, noise: number): number[][] {
  return seen.map((one, i) => seen.map((other, j) => kernel(one.at, other.at, scale) + (i === j ? noise ** 2 : 0)));
}

function likeliest(seen: readonly Observed[]): { readonly scale: number; readonly noise: number } {
  let best = { scale: SCALES[1] as number, noise: NOISES[1] as number };
  let most = Number.NEGATIVE_INFINITY;
  for (const scale of SCALES)
    for (const noise of NOISES) {
      const lower = cholesky(gram(seen, scale, noise));
      const z = solved(
        lower,
        seen.map(({ value }) => value - MEAN),
      );
      const log = -0.5 * dot(z, z) - lower.reduce((sum, row, i) => sum + Math.log(row[i]), 0);
      if (log > most) [most, best] = [log, { scale, noise }];
    }
  return best;
}

function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const lower: number[][] = matrix.map(() => []);
  for (let i = 0; i < matrix.length; i++)
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i][j];
      for (let k = 0; k < j; k++) sum -= lower[i][k] * lower[j][k];
      lower[i][j] = i === j ? Math.sqrt(Math.max(1e-12, sum)) : sum / lower[j][j];
    }
  return lower;
}

/** L⁻¹ b */
function solved(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const z: number[] = [];
  for (let i = 0; i < b.length; i++) {
    let sum = b[i];
    for (let j = 0; j < i; j++) sum -= lower[i][j] * z[j];
    z.push(sum / lower[i][i]);
  }
  return z;
}

function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, at) => sum + value * other[at], 0);
}
