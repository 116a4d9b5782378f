import { freezeDeep } from "../check/freeze-deep";
import { airAtLoadC } from "../crisp/clocks/load-effect";
import { brownScoreAt, crispScoreAt, meanWritten } from "../crisp/clocks/panel-score";
import {
  browningOf,
  clockBasis,
  coreC,
  crispMin,
  crustMmAt,
  lossPercentOf,
  type SlabConstants,
} from "../crisp/clocks/slab-clocks";
import { drawSlabs } from "../crisp/window/draw-slabs";
import { basisOf, momentsOf } from "../crisp/window/window-setting";
import { symmetricEigen } from "../statistics/linear-algebra/symmetric-eigen";
import { type CrispWindowOptions, crispWindow, type KitchenWindow } from "./crisp-window";

/** One trial that could be run, and what it would teach. */
export interface CandidateTrial {
  readonly thicknessMm: number;
  readonly setpointC: number;
  /** time of taking out (min) */
  readonly timeMin: number;
  /** standard deviation of the opening's logarithm after it, over that before [-]: the smaller, the better */
  readonly doubtLeft: number;
}

/** Which trial to run next for a setting. */
export interface NextTrial {
  readonly kind: "next trial";
  readonly window: KitchenWindow;
  /** standard deviation of the opening of the window now, as a share of it [-] */
  readonly doubtNow: number;
  /** best first */
  readonly candidates: readonly CandidateTrial[];
  readonly sentence: string;
}

const DRAWS = 500;
const TASTERS = 4;

/**
 * The trial that would narrow the opening of a window most, among thicknesses from 0.7 to 1.4 of the slab's, the
 * setpoint and 10 K to either side, and three times of taking out, each with checks, core, weights and four tasters.
 *
 * Linear in the draws of the calibration: with m the measurements of a candidate over their standard deviations and y
 * the logarithm of the opening, the variance left is Var(y) − cov(y, m)·[cov(m, m) + I]⁻¹·cov(m, y).
 *
 * @param options as for `crispWindow`
 *
 * @example
 * nextTrial({ kitchen: loadKitchen(), variantId: "beet-lentil" }).candidates.length; // → 27
 */
export function nextTrial(options: CrispWindowOptions): NextTrial {
  const window = crispWindow({ draws: 600, ...options });
  const { calibration, setting, opens } = window;
  const basis = basisOf(calibration, setting);
  const slabs = drawSlabs(calibration, setting, { count: DRAWS, seed: 7, coreError: 0 });
  const opening = slabs.map((slab) => {
    const { coreMin, crispMin: crisp } = momentsOf(basis, slab, setting.thicknessMm, setting);
    return Math.log(Math.min(1e4, Math.max(coreMin, crisp)));
  });
  const candidates: CandidateTrial[] = [];
  for (const thickness of [0.7, 1, 1.4])
    for (const stepK of [-10, 0, 10])
      for (const share of [0.7, 1, 1.3]) {
        const thicknessMm = thickness * setting.thicknessMm;
        const setpointC = setting.setpointC + stepK;
        const timeMin = Math.max(1, Math.round(2 * share * thickness * opens.min) / 2);
        const there = clockBasis({
          food: calibration.food,
          startC: setting.startC,
          airC: airAtLoadC(setpointC, setting.loadFraction),
          limitC: setting.limit.limitC,
        });
        const measured = slabs.map((slab) => {
          const depthMm = crustMmAt(there, slab, thicknessMm, timeMin);
          return measurements(slab, depthMm, Math.log(Math.min(1e4, crispMin(there, slab, thicknessMm))), {
            coreC: coreC(there, slab, thicknessMm, timeMin),
            lossPercent: lossPercentOf(there, slab, thicknessMm, depthMm),
            browning: browningOf(there, slab, depthMm),
          });
        });
        candidates.push({ thicknessMm, setpointC, timeMin, doubtLeft: doubtLeft(opening, measured) });
      }

  function measurements(
    slab: SlabConstants,
    depthMm: number,
    logCrisp: number,
    state: { readonly coreC: number; readonly lossPercent: number; readonly browning: number },
  ): number[] {
    const { noise } = calibration;
    const tasters = Math.sqrt(TASTERS);
    const score = crispScoreAt(depthMm, slab.crustMm, slab.panelWidthMm);
    return [
      logCrisp / noise.crispTime,
      state.coreC / noise.coreK,
      state.lossPercent / noise.lossPercent,
      (meanWritten(score, noise.crispScore) * tasters) / noise.crispScore,
      (meanWritten(brownScoreAt(state.browning), noise.brownScore) * tasters) / noise.brownScore,
    ];
  }

  const ranked = candidates.toSorted((a, b) => a.doubtLeft - b.doubtLeft);
  const best = ranked[0];
  const doubtNow = Math.sqrt(covarianceOf(opening, opening));
  return freezeDeep({
    kind: "next trial",
    window,
    doubtNow,
    candidates: ranked,
    sentence:
      `Next: ${best.thicknessMm.toFixed(1)} mm at ${best.setpointC} °C, taken out at ${best.timeMin} min, with checks, core, weights and ${TASTERS} tasters. ` +
      `It would leave ${Math.round(100 * best.doubtLeft)} % of the doubt about the opening (now ±${(196 * doubtNow).toFixed(1)} %).`,
  });
}

function doubtLeft(target: readonly number[], measured: readonly (readonly number[])[]): number {
  const size = measured[0].length;
  const columns = Array.from({ length: size }, (_, at) => measured.map((row) => row[at]));
  const spread = columns.map((a, i) => columns.map((b, j) => covarianceOf(a, b) + (i === j ? 1 : 0)));
  const shared = columns.map((column) => covarianceOf(target, column));
  const { values, vectors } = symmetricEigen(spread);
  const explained = values.reduce((sum, value, along) => {
    const part = vectors[along].reduce((dot, entry, at) => dot + entry * shared[at], 0);
    return sum + (part * part) / value;
  }, 0);
  const now = covarianceOf(target, target);
  return Math.sqrt(Math.max(0, 1 - explained / now));
}

function covarianceOf(a: readonly number[], b: readonly number[]): number {
  const meanA = a.reduce((sum, value) => sum + value, 0) / a.length;
  const meanB = b.reduce((sum, value) => sum + value, 0) / b.length;
  return a.reduce((sum, value, at) => sum + (value - meanA) * (b[at] - meanB), 0) / (a.length - 1);
}
