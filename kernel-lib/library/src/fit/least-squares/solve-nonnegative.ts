import { normOf } from "../../statistics/linear-algebra/norm-of";
import { solveLinear } from "./solve-linear";

/** What nonnegative weights leave. */
export interface NonnegativeSolution {
  readonly weights: Float64Array;
  /** target minus the weighted sum */
  readonly residual: Float64Array;
}

/**
 * The weights w ≥ 0 that bring Σ wᵢ vectorᵢ closest to a target, by the active-set method of Lawson & Hanson (Solving Least
 * Squares Problems, 1974, ch. 23). At the end no vector points along what is left.
 */
export function solveNonnegative(vectors: readonly Float64Array[], target: Float64Array): NonnegativeSolution {
  const weights = new Float64Array(vectors.length);
  const rounding = 1e-12 * normOf(target);
  let residual = Float64Array.from(target);
  const inside = new Set<number>();
  const blocked = new Set<number>();
  for (let round = 0; round < 10 * vectors.length + 10; round++) {
    const next = steepest(vectors, residual, inside, blocked);
    if (next.at < 0 || next.gain <= rounding * normOf(vectors[next.at])) break;
    inside.add(next.at);
    for (;;) {
      const members = [...inside];
      const { coefficients } = solveLinear(
        members.map((i) => vectors[i]),
        target,
      );
      let share = 1;
      let leaving = -1;
      members.forEach((i, k) => {
        if (coefficients[k] > 0) return;
        const reached = weights[i] === 0 ? 0 : weights[i] / (weights[i] - coefficients[k]);
        if (leaving < 0 || reached < share) {
          share = reached;
          leaving = i;
        }
      });
      members.forEach((i, k) => {
        weights[i] += share * (coefficients[k] - weights[i]);
      });
      if (leaving < 0) {
        blocked.clear();
        break;
      }
      weights[leaving] = 0;
      inside.delete(leaving);
      // rounding alone let it in: it would enter again at once
      if (leaving === next.at) blocked.add(leaving);
    }
    residual = Float64Array.from(target);
    for (const i of inside) for (let k = 0; k < residual.length; k++) residual[k] -= weights[i] * vectors[i][k];
  }
  return { weights, residual };
}

function steepest(
  vectors: readonly Float64Array[],
  residual: Float64Array,
  inside: ReadonlySet<number>,
  blocked: ReadonlySet<number>,
): { at: number; gain: number } {
  let at = -1;
  let gain = 0;
  vectors.forEach((vector, i) => {
    if (inside.has(i) || blocked.has(i)) return;
    let along = 0;
    for (let k = 0; k < vector.length; k++) along += vector[k] * residual[k];
    if (along > gain) {
      gain = along;
      at = i;
    }
  });
  return { at, gain };
}
