import { freezeDeep } from "../../check/freeze-deep";
import { browningOf } from "../../crisp/clocks/browning-clock";
import { clockBasis } from "../../crisp/clocks/clock-basis";
import { coreReadingC } from "../../crisp/clocks/core-clock";
import { crispMin, crustMmAt, lossPercentOf } from "../../crisp/clocks/crust-clock";
import { airAtLoadC } from "../../crisp/clocks/load-effect";
import { brownScoreAt, crispScoreAt, meanWritten } from "../../crisp/clocks/panel-score";
import { misfitAt } from "../../crisp/window/misfit-at";
import { pieceStock, piecesOfStock, typicalPiece } from "../../crisp/window/success-over-time";
import { basisOf, momentsOf, NEVER_MIN } from "../../crisp/window/window-setting";
import { slabMassG } from "../../pan/slab-mass";
import { covarianceOf, varianceLeft } from "../../statistics/linear-algebra/variance-left";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import { batchOnPan } from "../../trials/pieces/batch-on-pan";
import { ownMassText } from "../../units/mass-text";
import { roundToScale } from "../../units/round-to-scale";
import { SETPOINT_STEP_K } from "../../units/setpoint-step";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import { type CrispWindowOptions, crispWindow, type KitchenWindow } from "../window/crisp-window";

/** One trial that could be run, and what it would teach. */
export interface CandidateTrial {
  readonly panId: string;
  /** mass of mix on that pan (g) */
  readonly batchG: number;
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
  /** scores counted for each trial: as many as the log usually has, else 2 */
  readonly tasters: number;
  /** best first */
  readonly candidates: readonly CandidateTrial[];
  readonly sentence: string;
}

const DRAWS = 500;
/** Tasters counted where no scores were logged yet. */
const USUAL_TASTERS = 2;

/**
 * The trial that would narrow the opening of a window most, among batches on its pan for 0.75, 1 and 1.33 of the slab's
 * thickness, the setpoint and 10 K to either side, and three times of taking out, each with checks, core, weights and as
 * many tasters as the log has.
 *
 * Linear in the draws of the calibration: with m the measurements of a candidate over their standard deviations and y
 * the logarithm of the opening, the variance left is that of `varianceLeft`.
 *
 * @param options as for `crispWindow`
 *
 * @example
 * nextTrial({ kitchen: loadKitchen(), variantId: "beet-lentil" }).candidates.length; // → 27
 */
export function nextTrial(options: CrispWindowOptions): NextTrial {
  const { kitchen } = options;
  const window = crispWindow({ draws: 600, ...options });
  const { calibration, setting, opens } = window;
  const { noise } = calibration;
  const { units } = kitchen;
  const variant = variantOf(kitchen, window.variantId);
  const pan = panOf(kitchen, options.panId ?? variant.panId);
  const panel = kitchen.trials.filter((trial) => trial.variantId === window.variantId && trial.crispScores.length > 0);
  const tasters = panel.length === 0 ? USUAL_TASTERS : middle(panel.map((trial) => trial.crispScores.length));
  const basis = basisOf(calibration, setting);
  const misfit = misfitAt(calibration, setting, basis.coreError);
  const stock = pieceStock(calibration, { count: DRAWS, seed: 7 });
  const here = piecesOfStock(stock, setting).map((piece, at) => typicalPiece(stock, piece, misfit, at));
  const opening = here.map((piece) => {
    const { coreMin, crispMin: crisp } = momentsOf(basis, piece, setting.thicknessMm, setting);
    return Math.log(Math.min(NEVER_MIN, Math.max(coreMin, crisp)));
  });
  const candidates: CandidateTrial[] = [];
  for (const share of [0.75, 1, 4 / 3]) {
    const wantedMm = Math.min(share * setting.thicknessMm, 0.95 * pan.depthMm);
    const exactG = slabMassG({ pan, thicknessMm: wantedMm, densityKgM3: variant.densityKgM3 });
    const batchG = Math.max(roundToScale(20, units), roundToScale(exactG, units));
    const batch = batchOnPan({ kitchen, variant, pan, batchG });
    const { thicknessMm } = batch.slab;
    for (const steps of [-1, 0, 1]) {
      const setpointC = setting.setpointC + steps * SETPOINT_STEP_K[units];
      const place = { ...setting, setpointC, sidesMm: batch.sidesMm };
      const there = clockBasis({
        food: calibration.food,
        startC: setting.startC,
        airC: airAtLoadC(setpointC, setting.loadFraction),
        limitC: setting.limit.limitC,
      });
      const pieces = piecesOfStock(stock, place).map((piece, at) => typicalPiece(stock, piece, misfit, at));
      for (const early of [0.7, 1, 1.3]) {
        const timeMin = Math.max(1, Math.round(2 * early * share * opens.min) / 2);
        const measured = pieces.map((piece) => {
          const depthMm = crustMmAt(there, piece, thicknessMm, timeMin);
          const score = crispScoreAt(depthMm, piece.crustMm, piece.panelWidthMm);
          const brown = brownScoreAt(browningOf(there, piece, thicknessMm, depthMm), piece.brownSteepness);
          return [
            Math.log(Math.min(NEVER_MIN, crispMin(there, piece, thicknessMm))) / Math.hypot(noise.crispTime, noise.run),
            coreReadingC(there, piece, thicknessMm, timeMin, false) / noise.coreK,
            lossPercentOf(there, piece, thicknessMm, depthMm) / noise.lossPercent,
            (meanWritten(score, noise.crispScore) * Math.sqrt(tasters)) / noise.crispScore,
            (meanWritten(brown, noise.brownScore) * Math.sqrt(tasters)) / noise.brownScore,
          ];
        });
        const doubtLeft = Math.sqrt(varianceLeft(opening, measured));
        candidates.push({ panId: pan.id, batchG, thicknessMm, setpointC, timeMin, doubtLeft });
      }
    }
  }
  const ranked = candidates.toSorted((a, b) => a.doubtLeft - b.doubtLeft);
  const best = ranked[0];
  const doubtNow = Math.sqrt(covarianceOf(opening, opening));
  const looks = [-2, -1, 0].map((step) =>
    Math.max(1, best.timeMin + step * Math.max(1, Math.round(0.1 * best.timeMin))),
  );
  return freezeDeep({
    kind: "next trial",
    window,
    doubtNow,
    tasters,
    candidates: ranked,
    sentence:
      `Next: ${ownMassText(best.batchG, units)} on ${pan.name} (${thicknessWords(best.thicknessMm, units)}), ${ownSettingText(best.setpointC, units)} in ${setting.applianceId}; look at ${[...new Set(looks)].join(", ")} min, take out at ${best.timeMin} min, read the core at once and after two minutes, weigh before and after, ${tasters} ${tasters === 1 ? "taster" : "tasters"}. ` +
      `It would leave ${Math.round(100 * best.doubtLeft)} % of the doubt about when it is ready (now ±${(196 * doubtNow).toFixed(0)} %).`,
  });
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}
