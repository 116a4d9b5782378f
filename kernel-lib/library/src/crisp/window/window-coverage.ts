import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { ThermalModel } from "../../food/thermal/thermal-properties";
import { type SeededRandom, seededRandom } from "../../statistics/random/seeded-random";
import { type CrispCalibration, calibrateCrisp } from "../calibration/calibrate-crisp";
import type { CrispObservation } from "../calibration/crisp-observation";
import { crispPriors, priorValue } from "../calibration/crisp-priors";
import { airAtLoadC, coefficientAtLoad, crowdingOf } from "../clocks/load-effect";
import { brownScoreAt, crispScoreAt } from "../clocks/panel-score";
import {
  browningOf,
  type ClockBasis,
  clockBasis,
  coreC,
  crispMin,
  crustMmAt,
  lossPercentOf,
  type SlabConstants,
} from "../clocks/slab-clocks";
import { type CrispWindow, windowAt } from "./window-at";
import { basisOf, momentsOf } from "./window-setting";

/** What `windowCoverage` simulates. */
export interface WindowCoverageOptions {
  /** the mix */
  readonly food: ThermalModel;
  /** simulated kitchens; default 200 */
  readonly kitchens?: number;
  /** seed of the first kitchen; the others follow; default 1 */
  readonly seed?: number;
  /** called with the share done, 0 to 1 */
  readonly progress?: (done: number) => void;
}

/** How often one kind of 95 % interval held the truth. */
export interface WindowCoverageRow {
  readonly of: string;
  readonly held: number;
  readonly tried: number;
}

/** How honest the intervals and the chances are, over kitchens whose truth is known. */
export interface WindowCoverage {
  readonly kind: "window coverage";
  readonly kitchens: number;
  readonly rows: readonly WindowCoverageRow[];
  /** all rows together [-] */
  readonly held95: number;
  /** stated and true chance of success at the card time, one pair a kitchen [-] */
  readonly stated: readonly number[];
  readonly realised: readonly number[];
  /** share of all pieces whose core is below its limit at the card time [-]; 0.005 is allowed for */
  readonly unsafe: number;
}

const NOISE = { crispTime: 0.04, coreK: 1.2, lossPercent: 0.5, taster: 0.7, unevenness: 0.03 };
/** How far the short forms miss a real slab, drawn afresh for each. */
const SHORT_FORM = { core: 0.018, crust: 0.018 };
const APPLIANCES = ["basket", "oven"] as const;
const PIECES = 400;

/**
 * Checks the calibration against itself: kitchens whose constants are drawn from the priors log trials with a
 * kitchen's errors (scale, probe, tasters, checks now and then), are calibrated, and asked for a window that they did
 * not try. Counts how often the 95 % intervals hold the truth, and what the stated chance of success is worth.
 *
 * The truth follows the three clocks with the error that their short forms are known to have, so this measures the
 * statistics, not the physics.
 *
 * @returns counts by kind of interval, and stated against true chances
 */
export function windowCoverage(options: WindowCoverageOptions): WindowCoverage {
  const { food, kitchens = 200, seed = 1, progress } = options;
  if (!(Number.isInteger(kitchens) && kitchens >= 1))
    fail("windowCoverage: kitchens", "must be a whole number >= 1", kitchens);
  const rows = new Map<string, { held: number; tried: number }>();
  const count = (of: string, interval: readonly [number, number], truth: number): void => {
    const row = rows.get(of) ?? { held: 0, tried: 0 };
    row.tried++;
    if (truth >= interval[0] && truth <= interval[1]) row.held++;
    rows.set(of, row);
  };
  const stated: number[] = [];
  const realised: number[] = [];
  let unsafe = 0;
  for (let kitchen = 0; kitchen < kitchens; kitchen++) {
    const random = seededRandom(seed + kitchen);
    const truth = drawTruth(random, food);
    const calibration = calibrateCrisp({
      food,
      observations: logOf(random, truth, food),
      applianceIds: APPLIANCES,
      crustWaterKgM3: 400,
      unevenness: NOISE.unevenness,
    });
    calibration.constants.forEach((constant, at) => {
      if (constant.informed) count(constant.name.split(":")[0], constant.interval95, truth.values[at]);
    });
    const window = windowAt({
      calibration,
      applianceId: APPLIANCES[0],
      thicknessMm: 7 + 6 * random.uniform(),
      setpointC: 185 + 20 * random.uniform(),
      tooBrownScore: 2 + 5 * random.uniform(),
      draws: 500,
      seed: seed + kitchen,
    });
    const { trueWindow, chance, cold } = truthOf(window, calibration, truth, random);
    count("opens", window.opens.interval95, trueWindow.opensMin);
    count("closes", window.closes.interval95, trueWindow.closesMin);
    stated.push(window.recommended.success);
    realised.push(chance);
    unsafe += cold / (PIECES * kitchens);
    progress?.((kitchen + 1) / kitchens);
  }
  const list = [...rows].map(([of, row]) => ({ of, ...row }));
  const total = list.reduce((sum, row) => ({ held: sum.held + row.held, tried: sum.tried + row.tried }), {
    held: 0,
    tried: 0,
  });
  return freezeDeep({
    kind: "window coverage",
    kitchens,
    rows: list,
    held95: total.held / total.tried,
    stated,
    realised,
    unsafe,
  });
}

/** The constants of one simulated kitchen. */
interface Truth {
  readonly values: readonly number[];
  readonly slabIn: (appliance: number, loadFraction: number) => SlabConstants;
}

function drawTruth(random: SeededRandom, food: ThermalModel): Truth {
  const priors = crispPriors({ applianceIds: APPLIANCES, crustWaterKgM3: 400 });
  const values = priors.map((prior) => priorValue(prior, Math.max(-1.5, Math.min(1.5, random.normal()))));
  const [loadLoss, turnGain, conductivityFactor, crustWaterKgM3, crustMm, panelWidthMm, browningPerS, dripFraction] =
    values.slice(APPLIANCES.length);
  return {
    values,
    slabIn: (appliance, loadFraction) => ({
      coefficientWm2K: coefficientAtLoad(values[appliance], loadLoss, crowdingOf(loadFraction), turnGain, false),
      conductivityFactor,
      crustWaterKgM3,
      innerWaterKgM3: food.densityKgM3 * food.waterFraction,
      coatingMm: Number.POSITIVE_INFINITY,
      crustMm,
      panelWidthMm,
      browningPerS,
      dripFraction,
      coreFactor: Math.exp(SHORT_FORM.core * random.normal()),
      crustStartFactor: Math.exp(SHORT_FORM.crust * random.normal()),
    }),
  };
}

/** Sixteen trials: four thicknesses, two appliances, two loads, three setpoints, pulled early and late. */
function logOf(random: SeededRandom, truth: Truth, food: ThermalModel): CrispObservation[] {
  const seen: CrispObservation[] = [];
  const bases = new Map<number, ClockBasis>();
  const plan = [
    [0, 0.6, 200],
    [0, 0.6, 185],
    [1, 0.5, 200],
    [0, 1, 205],
  ] as const;
  for (const wantedMm of [6, 8.5, 11, 14])
    for (const [appliance, loadFraction, setpointC] of plan) {
      const thicknessMm = wantedMm * (1 + 0.02 * random.normal());
      const airC = airAtLoadC(setpointC, loadFraction);
      const basis = bases.get(airC) ?? clockBasis({ food, startC: -18, airC, limitC: 74 });
      bases.set(airC, basis);
      const slab = truth.slabIn(appliance, loadFraction);
      const crispAt = crispMin(basis, slab, thicknessMm) * Math.exp(NOISE.crispTime * random.normal());
      const turn = Math.min(60, crispAt);
      const before = Math.floor(turn);
      const timeMin = Math.max(3, Math.round(2 * turn * (0.75 + 0.6 * random.uniform())) / 2);
      const depthMm = crustMmAt(basis, slab, thicknessMm, timeMin);
      const taste = (score: number): number[] =>
        Array.from({ length: 4 }, () =>
          Math.max(0, Math.min(9, Math.round(2 * (score + NOISE.taster * random.normal())) / 2)),
        );
      const meanMm = thicknessMm * (1 + (NOISE.unevenness / Math.sqrt(5)) * random.normal());
      seen.push({
        id: `S-${seen.length + 1}`,
        applianceId: APPLIANCES[appliance],
        thicknessMm: meanMm,
        thicknessSeMm: (thicknessMm * NOISE.unevenness) / Math.sqrt(5),
        setpointC,
        loadFraction,
        startC: -18,
        turned: false,
        timeMin,
        notCrispMin: Math.min(before, timeMin),
        crispMin: timeMin >= before + 1 && crispAt <= before + 1 ? before + 1 : null,
        coreC: Math.min(100, coreC(basis, slab, thicknessMm, timeMin) + NOISE.coreK * random.normal()),
        lossPercent: lossPercentOf(basis, slab, thicknessMm, depthMm) + NOISE.lossPercent * random.normal(),
        crispScores: taste(crispScoreAt(depthMm, slab.crustMm, slab.panelWidthMm)),
        brownScores: taste(brownScoreAt(browningOf(basis, slab, depthMm))),
      });
    }
  return seen;
}

/** What the truth makes of a window: its moments, the share of pieces that succeed, and how many stay too cold. */
function truthOf(
  window: CrispWindow,
  calibration: CrispCalibration,
  truth: Truth,
  random: SeededRandom,
): { trueWindow: { opensMin: number; closesMin: number }; chance: number; cold: number } {
  const { setting, recommended } = window;
  const basis = basisOf(calibration, setting);
  const slab = truth.slabIn(APPLIANCES.indexOf(setting.applianceId as "basket"), setting.loadFraction);
  const at = momentsOf(basis, slab, setting.thicknessMm, setting);
  let good = 0;
  let cold = 0;
  for (let piece = 0; piece < PIECES; piece++) {
    const thicknessMm = setting.thicknessMm * (1 + NOISE.unevenness * random.normal());
    const own = momentsOf(basis, slab, thicknessMm, setting);
    const crispAt = own.crispMin * Math.exp(NOISE.crispTime * random.normal());
    const time = recommended.cardMin;
    if (own.coreMin <= time && crispAt <= time && time <= Math.min(own.brownMin, own.dryMin)) good++;
    if (own.coreMin > time) cold++;
  }
  return {
    trueWindow: { opensMin: Math.max(at.coreMin, at.crispMin), closesMin: Math.min(at.brownMin, at.dryMin) },
    chance: good / PIECES,
    cold,
  };
}
