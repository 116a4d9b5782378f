/**
 * The best 20 runs of a full quadratic in 3 factors (10 terms) from 1,000 candidates. Peer: the same search from the same kind of
 * starts without rank-one steps, each exchange judged by a determinant worked out anew (Cholesky of XᵀX), written here in plain
 * loops; 2 of its starts are timed and counted up to as many as ours. Ratio = peer's time / ours.
 */
import { loadKitchen, nextTrial } from "slabwright";
import { windowCalibration } from "slabwright/advice";
import { fullFactorial, optimalDesign, polynomialTerms, termsModel } from "slabwright/plan";
import { seededRandom } from "slabwright/statistics";

const RUNS = 20;
const STARTS = 20;
const PEER_STARTS = 2;
const factors = ["a", "b", "c"];
const model = termsModel({ factors, terms: polynomialTerms(factors) });
const candidates = fullFactorial({ levels: [10, 10, 10] });

/** ln |XᵀX| from the rows, −Infinity where it is 0. */
function logDeterminant(rows) {
  const size = rows[0].length;
  const m = Array.from({ length: size }, () => new Float64Array(size));
  for (const row of rows) for (let i = 0; i < size; i++) for (let j = 0; j <= i; j++) m[i][j] += row[i] * row[j];
  let log = 0;
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) {
      let sum = m[i][j];
      for (let k = 0; k < j; k++) sum -= m[i][k] * m[j][k];
      if (i > j) m[i][j] = sum / m[j][j];
      else {
        if (!(sum > 1e-12)) return Number.NEGATIVE_INFINITY;
        m[i][i] = Math.sqrt(sum);
        log += Math.log(sum);
      }
    }
  return log;
}

/** Run by run, the best of all candidates, until none gains. */
function plainExchange(rows, random) {
  const chosen = Array.from({ length: RUNS }, () => random.integer(rows.length));
  let best = logDeterminant(chosen.map((at) => rows[at]));
  for (let exchanged = true; exchanged; ) {
    exchanged = false;
    for (let run = 0; run < RUNS; run++) {
      const now = chosen.map((at) => rows[at]);
      let better = -1;
      for (let at = 0; at < rows.length; at++) {
        now[run] = rows[at];
        const value = logDeterminant(now);
        if (!(value > best + 1e-9)) continue;
        best = value;
        better = at;
      }
      if (better < 0) continue;
      chosen[run] = better;
      exchanged = true;
    }
  }
  return best;
}

/** Time to value the trials of a young log for the question of the dial, which has most of them, counted up or down to 500. */
function nextTrialRow() {
  const demo = loadKitchen();
  const { variantId } = demo.variants[1];
  const own = demo.trials.filter((trial) => trial.variantId === variantId);
  const kitchen = { ...demo, trials: own.slice(0, 6) };
  const calibration = windowCalibration({ kitchen, variantId });
  const work = () => nextTrial({ kitchen, variantId, calibration, question: { kind: "setpoint" } });
  const { candidates } = work();
  const used = process.cpuUsage();
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const { user, system } = process.cpuUsage(used);
  return {
    name: "plan.next500.ms",
    value: (times[2] * 500) / candidates.length,
    unit: "ms",
    note: `${candidates.length} trials in ${times[2].toFixed(0)} ms, ${((user + system) / 5000).toFixed(0)} of the processor's; 5 settings to decide between, 6 trials logged; aim 2000 ms`,
  };
}

export async function rows() {
  const work = () => optimalDesign({ candidates, model, runs: RUNS, starts: STARTS });
  const { quality, startsAgreeing } = work();
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);

  const regressors = candidates.map((point) => model.row(point));
  const random = seededRandom(1);
  const start = performance.now();
  const found = Array.from({ length: PEER_STARTS }, () => plainExchange(regressors, random));
  const peerMs = ((performance.now() - start) * STARTS) / PEER_STARTS;
  const lead = quality.logDeterminant - found.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY);
  return [
    {
      name: "plan.dopt20of1000.ms",
      value: times[2],
      unit: "ms",
      peer: "the same exchange, determinants worked out anew",
      peerValue: peerMs,
      ratio: peerMs / times[2],
      note: `${STARTS} starts, ${startsAgreeing} of them as good; peer: ${PEER_STARTS} starts counted up; D-efficiency ${quality.dEfficiency.toFixed(2)} %, ln |XᵀX| ${lead.toFixed(4)} above the peer's best`,
    },
    nextTrialRow(),
  ];
}
