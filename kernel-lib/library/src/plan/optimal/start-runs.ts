import { choleskyFactor, inverseFrom } from "../../statistics/linear-algebra/cholesky";
import type { SeededRandom } from "../../statistics/random/seeded-random";
import { variancesAt } from "./design-quality";
import type { ExchangeProblem } from "./exchange-runs";
import { stepInverse } from "./step-inverse";

/** Stands for a run's worth of knowledge before any: small, so that a direction that no run has seen comes first. */
const RIDGE = 1e-4;

/**
 * Runs to start an exchange from: `drawn` at random, then each time the candidate whose forecast is least known, which doubles
 * as the quickest way to a plan that tells all terms apart (Wynn 1970; with a ridge, as nothing is known at first).
 *
 * @param runs how many
 * @returns candidate of each run
 */
export function startRuns(problem: ExchangeProblem, runs: number, drawn: number, random: SeededRandom): Int32Array {
  const { rows, size } = problem;
  const count = rows.length / size;
  const chosen = new Int32Array(runs);
  const inverse = ridgedInverse(problem);
  const own = variancesAt(inverse, rows, size);
  for (let run = 0; run < runs; run++) {
    let pick = random.integer(count);
    if (run >= drawn) for (let at = 0; at < count; at++) if (own[at] > own[pick] * (1 + 1e-9)) pick = at;
    chosen[run] = pick;
    stepInverse(inverse, own, rows, pick, 1);
  }
  return chosen;
}

/** (kept + ridge)⁻¹ */
function ridgedInverse({ kept, size }: ExchangeProblem): Float64Array {
  const ridged = Float64Array.from(kept);
  for (let i = 0; i < size; i++) ridged[i * size + i] += RIDGE;
  return inverseFrom(choleskyFactor(ridged, size), size);
}
