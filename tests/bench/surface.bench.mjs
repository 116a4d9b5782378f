/**
 * Plans and surfaces, held to what is known of them.
 *
 * The best 20 runs of a full quadratic in 3 factors anywhere in the cube; peer: the best of a 10 × 10 × 10 grid by exchange, its
 * D-efficiency beside ours. How often the region of a stationary point holds the true one (nominal 95 %), for a sharp top, one that is
 * nearly a ridge, and a saddle; how often products that crisp alike are told apart when times are seen at looks (nominal 5 %).
 */
import { againstStationary, fitSurface } from "slabwright/fit";
import {
  centralComposite,
  continuousDesign,
  fullFactorial,
  optimalDesign,
  polynomialTerms,
  powerOfCensoredTimes,
  powerOfTwoMeans,
  termsModel,
} from "slabwright/plan";
import { seededRandom } from "slabwright/statistics";

const FITS = 4000;
const TOP = [0.4, -0.3];

function timed(work) {
  const start = performance.now();
  const result = work();
  return { result, ms: performance.now() - start };
}

/** Share of fits whose region holds the true stationary point (%). */
function coverage(bend) {
  const { points } = centralComposite({ factors: 2, centres: [2, 2] });
  let held = 0;
  for (let seed = 1; seed <= FITS; seed++) {
    const random = seededRandom(seed);
    const y = points.map(([a, b]) => 10 - 1.5 * (a - TOP[0]) ** 2 + bend * (b - TOP[1]) ** 2 + random.normal(0, 0.5));
    if (againstStationary(fitSurface({ factors: ["a", "b"], points, y }), TOP).pValue > 0.05) held++;
  }
  return (100 * held) / FITS;
}

export async function rows() {
  const factors = ["a", "b", "c"];
  const model = termsModel({ factors, terms: polynomialTerms(factors) });
  const ranges = factors.map(() => [-1, 1]);
  const free = timed(() => continuousDesign({ model, ranges, runs: 20 }));
  const grid = timed(() => optimalDesign({ candidates: fullFactorial({ levels: [10, 10, 10] }), model, runs: 20 }));
  const efficiency = free.result.quality.dEfficiency;
  const gridEfficiency = grid.result.quality.dEfficiency;
  const covered = [-1, -0.15, 0.5].map(coverage);
  const error = 100 * Math.sqrt((0.95 * 0.05) / FITS);
  const looksMin = [8, 9, 10, 11, 12, 13, 14];
  const power = powerOfCensoredTimes({
    timesMin: [10, 11],
    scale: 0.09,
    distribution: "lognormal",
    looksMin,
    trials: 10,
    draws: 2000,
  });
  const spread = Math.hypot(0.09, 1 / 10.5 / Math.sqrt(12));
  const plain = powerOfTwoMeans({ difference: Math.log(1.1), sd: spread }, 10);
  return [
    {
      name: "plan.continuous20.ms",
      value: free.ms,
      unit: "ms",
      peer: "exchange over a grid of 1,000",
      peerValue: grid.ms,
      ratio: grid.ms / free.ms,
      note: `D-efficiency ${efficiency.toFixed(3)} % against ${gridEfficiency.toFixed(3)} % on the grid; ${free.result.startsAgreeing} of ${free.result.starts} starts as good`,
    },
    {
      name: "surface.stationaryCoverage.percent",
      value: covered.reduce((worst, one) => (Math.abs(one - 95) > Math.abs(worst - 95) ? one : worst)),
      unit: "%",
      peer: "nominal",
      peerValue: 95,
      ratio: null,
      note: `sharp top ${covered[0].toFixed(1)}, nearly a ridge ${covered[1].toFixed(1)}, saddle ${covered[2].toFixed(1)}, each ± ${error.toFixed(1)} (1 s.e.), ${FITS} fits`,
    },
    {
      name: "plan.censoredPower.percent",
      value: 100 * power.power,
      unit: "%",
      peer: "t test with the looks as scatter",
      peerValue: 100 * plain,
      ratio: null,
      note: `± ${(100 * power.monteCarloError).toFixed(1)}; false alarms ${(100 * power.falseAlarms).toFixed(1)} ± ${(100 * power.falseAlarmsError).toFixed(1)} %, undecided ${(100 * power.undecided).toFixed(1)} %`,
    },
  ];
}
