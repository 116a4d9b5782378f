import { choleskyFactor, inverseFrom } from "../../statistics/linear-algebra/cholesky";
import type { SeededRandom } from "../../statistics/random/seeded-random";
import { variancesAt } from "./design-quality";
import type { ExchangeProblem } from "./exchange-runs";

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
  for (let run = 0; run < runs; run++) {
    const own = variancesAt(inverse, rows, size);
    let pick = random.integer(count);
    if (run >= drawn) for (let at = 0; at < count; at++) if (own[at] > own[pick] * (1 + 1e-9)) pick = at;
    chosen[run] = pick;
    addRow(inverse, rows.subarray(pick * size, (pick + 1) * size));
  }
  return chosen;
}

/** (kept + ridge)⁻¹ */
function ridgedInverse({ kept, size }: ExchangeProblem): Float64Array {
  const ridged = Float64Array.from(kept);
  for (let i = 0; i < size; i++) ridged[i * size + i] += RIDGE;
  return inverseFrom(choleskyFactor(ridged, size), size);
}

function addRow(inverse: Float64Array, row: Float64Array): void {
  const size = row.length;
  const u = new Float64Array(size);
  let d = 0;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) u[i] += inverse[i * size + j] * row[j];
    d += u[i] * row[i];
  }
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) inverse[i * size + j] -= (u[i] * u[j]) / (1 + d);
}
