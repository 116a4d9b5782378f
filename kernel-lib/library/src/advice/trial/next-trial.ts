import { freezeDeep } from "../../check/freeze-deep";
import { browningOf } from "../../crisp/clocks/browning-clock";
import { clockBasis } from "../../crisp/clocks/clock-basis";
import { coreReadingC } from "../../crisp/clocks/core-clock";
import { crispMin, crustMmAt, lossPercentOf } from "../../crisp/clocks/crust-clock";
import { airAtLoadC } from "../../crisp/clocks/load-effect";
import { brownScoreAt, crispScoreAt, meanWritten } from "../../crisp/clocks/panel-score";
import { misfitAt } from "../../crisp/window/misfit-at";
import { pieceStock, piecesOfStock, typicalPiece } from "../../crisp/window/success-over-time";
import { basisOf, momentsOf, NEVER_MIN, type SettledSetting } from "../../crisp/window/window-setting";
import type { Pan } from "../../pan/pan";
import { limitText } from "../../safety/limit-text";
import { covarianceOf, varianceLeft } from "../../statistics/linear-algebra/variance-left";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { dialSetting } from "../../units/dial-setting";
import { massText } from "../../units/mass-text";
import { SETPOINT_STEP_K } from "../../units/setpoint-step";
import { settingText } from "../../units/setting-text";
import type { KitchenUnits } from "../../units/unit-table";
import { type CrispWindowOptions, crispWindow, type KitchenWindow } from "../window/crisp-window";
import { firstMorning } from "./first-morning";
import { planCautions } from "./plan-cautions";
import { looksText, type PlanStep, slabSteps, tastersOf, tastersText } from "./plan-words";
import { LEVEL_FULL, type PlannedSlab, plannedSlab } from "./planned-slab";
import { isWithinClocks, withinClocks } from "./within-clocks";

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
  /** scores counted for each trial: as many as the kitchen's logs usually have, else 2 */
  readonly tasters: number;
  /** best first */
  readonly candidates: readonly CandidateTrial[];
  /** how to run the best of them, or the first morning where nothing was logged yet */
  readonly steps: readonly PlanStep[];
  /** core limit and what goes with it, to stand below the steps */
  readonly cautions: readonly string[];
  readonly sentence: string;
}

const DRAWS = 500;
/** Tasters counted where no scores were logged yet. */
const USUAL_TASTERS = 2;
/** Thickness of a candidate's slab over the window's; our judgement. */
const SHARES = [0.75, 1, 4 / 3] as const;

/**
 * The trial that would narrow the opening of a window most, among batches for 0.75, 1 and 1.33 of the slab's thickness, the
 * setpoint and one step of a dial to either side, and three times of taking out, each with checks, core, weights and as many
 * tasters as the logs have. Batches are such as a scale is read by, on the window's pan or, where that is too shallow,
 * another of the kitchen's; settings are those of a dial (`dialSetting`).
 *
 * Linear in the draws of the calibration: with m the measurements of a candidate over their standard deviations and y
 * the logarithm of the opening, the variance left is that of `varianceLeft`. Where no trial of the variant was logged yet,
 * steps and sentence are those of the `firstMorning`.
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
  const known = tastersOf(kitchen, window.variantId);
  const tasters = known ?? USUAL_TASTERS;
  const basis = basisOf(calibration, setting);
  const misfit = misfitAt(calibration, setting, basis.coreError);
  const stock = pieceStock(calibration, { count: DRAWS, seed: 7 });
  const here = piecesOfStock(stock, setting).map((piece, at) => typicalPiece(stock, piece, misfit, at));
  const opening = here.map((piece) => {
    const { coreMin, crispMin: crisp } = momentsOf(basis, piece, setting.thicknessMm, setting);
    return Math.log(Math.min(NEVER_MIN, Math.max(coreMin, crisp)));
  });
  const opensMin = Math.min(opens.min, 3 * setting.longestMin);
  const candidates: (CandidateTrial & { readonly slab: PlannedSlab })[] = [];
  for (const { slab, share } of slabsOf({ kitchen, variant, pan, setting })) {
    const { panId, batchG, thicknessMm } = slab;
    for (const setpointC of setpointsOf(setting.setpointC, units)) {
      const place = { ...setting, setpointC, sidesMm: slab.sidesMm };
      const there = clockBasis({
        food: calibration.food,
        startC: setting.startC,
        airC: airAtLoadC(setpointC, setting.loadFraction),
        limitC: setting.limit.limitC,
      });
      const pieces = piecesOfStock(stock, place).map((piece, at) => typicalPiece(stock, piece, misfit, at));
      for (const early of [0.7, 1, 1.3]) {
        const timeMin = Math.max(1, Math.round(2 * early * share * opensMin) / 2);
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
        candidates.push({ panId, batchG, thicknessMm, setpointC, timeMin, doubtLeft, slab });
      }
    }
  }
  const ranked = candidates.toSorted((a, b) => a.doubtLeft - b.doubtLeft);
  const doubtNow = Math.sqrt(covarianceOf(opening, opening));
  const isNew = !kitchen.trials.some((trial) => trial.variantId === window.variantId);
  const { steps, sentence } =
    isNew || ranked.length === 0
      ? firstMorning({ kitchen, variantId: window.variantId })
      : inWords({ kitchen, window, best: ranked[0], tasters: tastersText(known), doubtNow });
  return freezeDeep({
    kind: "next trial",
    window,
    doubtNow,
    tasters,
    candidates: ranked.map(({ slab: _, ...candidate }) => candidate),
    steps,
    cautions: planCautions(setting.limit, units),
    sentence: isNew ? `No trial of ${window.variantName} is logged yet. ${sentence}` : sentence,
  });
}

/** Batches for three thicknesses: on the pan, or on another of its kind where it is too shallow; none twice. */
function slabsOf({
  kitchen,
  variant,
  pan,
  setting: { thicknessMm, setpointC },
}: {
  readonly kitchen: Kitchen;
  readonly variant: KitchenVariant;
  readonly pan: Pan;
  readonly setting: SettledSetting;
}): readonly { readonly slab: PlannedSlab; readonly share: number }[] {
  const found = new Map<string, { readonly slab: PlannedSlab; readonly share: number }>();
  for (const share of SHARES) {
    const wantedMm = share * thicknessMm;
    const deep = kitchen.pans.filter(
      (other) => (other.shape === "wells") === (pan.shape === "wells") && 0.9 * other.depthMm >= wantedMm,
    );
    const place = deep.includes(pan) ? pan : (deep[0] ?? pan);
    const slab = plannedSlab({
      kitchen,
      variant,
      pan: place,
      thicknessMm: wantedMm,
      full: share > 1 ? undefined : LEVEL_FULL,
    });
    if (slab === null || !isWithinClocks({ ...slab, setpointC })) continue;
    const key = `${slab.panId} ${slab.batchG}`;
    if (!found.has(key)) found.set(key, { slab, share: slab.thicknessMm / thicknessMm });
  }
  return [...found.values()];
}

/** The setting on the dial that is nearest to the window's, and one step to either side. */
function setpointsOf(setpointC: number, units: KitchenUnits): readonly number[] {
  const settings = [-1, 0, 1]
    .map((steps) => dialSetting(setpointC + steps * SETPOINT_STEP_K[units], units))
    .filter(
      (setting) => withinClocks({ thicknessMm: 10, sidesMm: [40, 40], setpointC: setting }).setpointC === setting,
    );
  return settings.length === 0 ? [setpointC] : settings;
}

interface InWordsOptions {
  readonly kitchen: Kitchen;
  readonly window: KitchenWindow;
  readonly best: CandidateTrial & { readonly slab: PlannedSlab };
  readonly tasters: string;
  readonly doubtNow: number;
}

/** How to run a trial: step by step, and in a few sentences. */
function inWords({ kitchen, window, best, tasters, doubtNow }: InWordsOptions): {
  readonly steps: readonly PlanStep[];
  readonly sentence: string;
} {
  const { units } = kitchen;
  const { timeMin, setpointC, slab } = best;
  const { applianceId, limit } = window.setting;
  const appliance = applianceOf(kitchen, applianceId).name;
  const looks = [-2, -1, 0].map((step) => Math.max(1, timeMin + step * Math.max(1, Math.round(0.1 * timeMin))));
  const look = `look at ${looksText([...new Set(looks)])}, take out at ${timeMin} min`;
  const core = "read the core at once and at its highest within two minutes";
  const below = `Below ${limitText(limit, units)} put them back or throw them away.`;
  const steps: readonly PlanStep[] = [
    ...slabSteps({ variant: variantOf(kitchen, window.variantId), units, slabs: [slab] }),
    { of: "heat", sentence: `Pre-heat the ${appliance} to ${settingText(setpointC, units)}.` },
    {
      of: "load",
      sentence: `Weigh the pieces of one load together, lay them in one layer on ${Math.round(100 * window.setting.loadFraction)} % of the floor, ${look}, ${core}, and weigh them again. ${below}`,
    },
    {
      of: "score",
      sentence: `Have ${tasters} score crispness and browning, 0 to 9, if the core was at ${limitText(limit, units)} or more.`,
    },
    { of: "log", sentence: "Write a line in the log." },
  ];
  return {
    steps,
    sentence:
      `Next: ${massText(slab.batchG, units)} of mix on the ${slab.panName}, ${settingText(setpointC, units)} in the ${appliance}; ${look}, ${core}, weigh before and after, and have ${tasters} score them. ${below} ` +
      `It would leave ${Math.round(100 * best.doubtLeft)} % of the doubt about when it is ready (now ±${(196 * doubtNow).toFixed(0)} %).`,
  };
}
