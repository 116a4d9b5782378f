import { freezeDeep } from "../../check/freeze-deep";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import type { Moment } from "../../crisp/window/window-at";
import { NEVER_MIN } from "../../crisp/window/window-setting";
import type { CoreLimit } from "../../safety/core-limit";
import { limitText } from "../../safety/limit-text";
import type { Appliance } from "../../trials/appliance";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { dialSetting } from "../../units/dial-setting";
import { settingText } from "../../units/setting-text";
import type { KitchenUnits } from "../../units/unit-table";
import { crispWindow } from "../window/crisp-window";
import { piecesOnFloor } from "../window/load-plan";
import { windowCalibration } from "../window/window-calibration";
import { planCautions } from "./plan-cautions";
import { looksText, type PlanStep, slabSteps, tastersOf, tastersText } from "./plan-words";
import { LEVEL_FULL, ownBatch, type PlannedSlab, plannedSlab } from "./planned-slab";
import { withinClocks } from "./within-clocks";

/** One reheat of pieces from one slab. */
export interface PlannedLoad {
  /** which of `slabs`, from 0 */
  readonly slab: number;
  /** `"early"`: out while the core still climbs, not to be eaten; `"watched"`: looked at until crisp; `"late"`: a quarter longer */
  readonly purpose: "early" | "watched" | "late";
  readonly pieces: number;
  /** share of the floor that they cover [-] */
  readonly loadFraction: number;
  /** when to look (min); empty where nobody need look */
  readonly looksMin: readonly number[];
  /** when to take out (min): the latest for a watched load, a guess for a late one */
  readonly takeOutMin: number;
}

/** A plan for the first morning with a variant. */
export interface FirstMorning {
  readonly kind: "first morning";
  readonly variantId: string;
  readonly variantName: string;
  readonly applianceId: string;
  readonly applianceName: string;
  /** a setting that a dial has (°C) */
  readonly setpointC: number;
  readonly slabs: readonly PlannedSlab[];
  readonly loads: readonly PlannedLoad[];
  /** what is usual of such pieces, with its wide range, one sentence a slab */
  readonly expected: readonly string[];
  readonly steps: readonly PlanStep[];
  readonly cautions: readonly string[];
  readonly limit: CoreLimit;
  readonly units: KitchenUnits;
  /** all of it in words, a line a step */
  readonly sentence: string;
}

/** What `firstMorning` works from. */
export interface FirstMorningOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
}

/** The thinnest and thickest slab of a first morning (mm); our judgement. */
const THINNEST_MM = 3;
const THICKEST_MM = 40;
/** The other slab, over the first: a third thicker, or else a quarter thinner; our judgement. */
const OTHER = [4 / 3, 3 / 4] as const;
/** Loads a slab: one early, one watched, one late; our judgement. */
const PURPOSES = ["early", "watched", "late"] as const;
/** The early load is out at this share of the time at which its core should be at the limit; our judgement. */
const EARLY = 0.75;
const LATER = 1.25;
const MOST_LOOKS = 6;
/** The clocks know settings from here on (°C). */
const COOLEST_C = 130;
const DRAWS = 300;

/**
 * The plan for the first morning with a variant that nobody has tried: two slabs of its mix on this kitchen's pans, a third
 * apart in thickness where the pans allow, three loads of each (one out early to read a core that still climbs, one watched
 * until it is crisp, one a quarter longer), what to weigh and what to write down. Six loads over two thicknesses are what a
 * card asks for first (`cardEvidence`).
 *
 * Its times are the priors', of pieces like these in appliances like this one (`crispPriors`), and carry their wide range;
 * the core is probed in every load.
 *
 * @returns slabs, loads and steps as data, and the whole in words
 *
 * @example
 * const kitchen = { ...loadKitchen(), trials: [], units: "us" };
 * const morning = firstMorning({ kitchen, variantId: "beet-lentil" });
 * morning.steps[0].sentence; // → "Weigh out 2 lb 8.5 oz (1148 g) of mix and spread it level on the half sheet; it should lie about 11/32 in (8.8 mm) deep."
 * morning.loads.length; // → 6
 */
export function firstMorning({ kitchen, variantId }: FirstMorningOptions): FirstMorning {
  const variant = variantOf(kitchen, variantId);
  const { units } = kitchen;
  const appliance = applianceOf(kitchen, variant.applianceId);
  const setpointC = Math.max(COOLEST_C, dialSetting(variant.setpointC, units));
  const slabs = slabsOf(kitchen, variant);
  const calibration = windowCalibration({ kitchen, variantId, without: trialsOf(kitchen, variantId) });
  const loads: PlannedLoad[] = [];
  const expected: string[] = [];
  for (const [at, slab] of slabs.entries()) {
    const { pieces, loadFraction, purposes } = loadsOf(slab, appliance);
    const window = crispWindow({
      kitchen,
      variantId,
      calibration,
      ...withinClocks({ ...slab, setpointC }),
      loadFraction,
      draws: DRAWS,
    });
    const { core, crisp, setting } = window;
    const looksMin = looksOf(crisp.interval95, setting.longestMin);
    const lastMin = looksMin.at(-1) as number;
    const guessMin = Math.min(crisp.min, lastMin);
    const early = Math.min(EARLY * core.min, lastMin);
    for (const purpose of purposes) {
      const own = {
        early: { looksMin: [], takeOutMin: Math.max(1, Math.round(2 * early) / 2) },
        watched: { looksMin, takeOutMin: lastMin },
        late: { looksMin: [], takeOutMin: Math.max(1, Math.round(LATER * guessMin)) },
      }[purpose];
      const load: PlannedLoad = { slab: at, purpose, pieces, loadFraction, ...own };
      loads.push(load);
    }
    expected.push(
      `${sentenceCase(slabName(slabs, at, variant))} should be crisp after ${aroundText(crisp)}, and its core at ${limitText(variant.limit, units)} after ${aroundText(core)}.`,
    );
  }
  const cautions = planCautions(variant.limit, units);
  const tasters = tastersText(tastersOf(kitchen, variantId));
  const steps: readonly PlanStep[] = [
    ...slabSteps({ variant, units, slabs }),
    { of: "heat", sentence: `Pre-heat the ${appliance.name} to ${settingText(setpointC, units)}.` },
    {
      of: "load",
      sentence: `Run every load alike: weigh its pieces together before and after, lay them in one loose layer, and read the core of the thickest piece as soon as they are out and at its highest within two minutes; below ${limitText(variant.limit, units)} put them back or throw them away.`,
    },
    ...loads.map((load, at) => loadStep({ load, at, loads, slabs, variant })),
    {
      of: "score",
      sentence: `Have ${tasters} score crispness and browning, 0 to 9, of every load whose core was at ${limitText(variant.limit, units)} or more.`,
    },
    { of: "log", sentence: "Write a line in the log for every load, the early ones too." },
  ];
  const lines = [
    `The first morning with ${variant.name}: ${slabs.length === 1 ? "one" : "two"} ${variant.form === "batter" ? "filling" : "slab"}${slabs.length === 1 ? "" : "s"}, ${loads.length === 1 ? "one load" : `${loads.length} loads`} in the ${appliance.name}.`,
    `What is usual of such pieces, not yet of this kitchen, hence the wide range: ${expected.join(" ")}`,
    ...steps.map(({ sentence }, at) => `${at + 1}. ${sentence}`),
    ...cautions,
  ];
  return freezeDeep({
    kind: "first morning",
    variantId,
    variantName: variant.name,
    applianceId: appliance.applianceId,
    applianceName: appliance.name,
    setpointC,
    slabs,
    loads,
    expected,
    steps,
    cautions,
    limit: variant.limit,
    units,
    sentence: lines.join("\n"),
  });
}

/** A first morning knows nothing of the trials that came after it. */
function trialsOf(kitchen: Kitchen, variantId: string): readonly string[] {
  return kitchen.trials.filter((trial) => trial.variantId === variantId).map((trial) => trial.trialId);
}

/** The variant's own batch, and one that is a third thicker or a quarter thinner; one alone where no pan takes a second. */
function slabsOf(kitchen: Kitchen, variant: KitchenVariant): readonly PlannedSlab[] {
  const pan = panOf(kitchen, variant.panId);
  const tuned = ownBatch(kitchen, variant).slab;
  const first = plannedSlab({
    kitchen,
    variant,
    pan,
    thicknessMm: between(tuned.thicknessMm, THINNEST_MM, THICKEST_MM),
    full: LEVEL_FULL,
  });
  if (first === null) return [];
  const others = kitchen.pans.filter(
    (other) => other.id !== pan.id && (other.shape === "wells") === (pan.shape === "wells"),
  );
  // two of one pan first, then another pan of its kind, then the same pan again
  const places = pan.count > 1 ? [pan, ...others] : [...others, pan];
  for (const share of OTHER) {
    const wantedMm = share * first.thicknessMm;
    if (wantedMm < THINNEST_MM || wantedMm > THICKEST_MM) continue;
    for (const place of places) {
      const second = plannedSlab({ kitchen, variant, pan: place, thicknessMm: wantedMm });
      if (second !== null && Math.abs(Math.log(second.thicknessMm / wantedMm)) < 0.05) return [first, second];
    }
  }
  return [first];
}

/** How many pieces go in at once, so that a slab gives three loose loads, and what each of them is for. */
function loadsOf(
  { pieces, sidesMm }: PlannedSlab,
  appliance: Appliance,
): { readonly pieces: number; readonly loadFraction: number; readonly purposes: readonly PlannedLoad["purpose"][] } {
  const pieceMm2 = sidesMm[0] * sidesMm[1];
  const loose = Math.max(1, piecesOnFloor(appliance, LOOSE_LOAD, sidesMm));
  const each = between(Math.floor(pieces / PURPOSES.length), 1, loose);
  const loads = Math.min(PURPOSES.length, Math.floor(pieces / each));
  return {
    pieces: each,
    loadFraction: Math.min(1.2, (each * pieceMm2) / (100 * appliance.floorCm2)),
    purposes: loads === 1 ? ["watched"] : PURPOSES.slice(0, loads),
  };
}

/** At most six looks over the range in which pieces may turn crisp, each later than the last by the same share; whole minutes. */
function looksOf([low, high]: readonly [number, number], longestMin: number): readonly number[] {
  const fromMin = between(Math.floor(low), 1, Math.max(1, Math.floor(longestMin)));
  const toMin = Math.max(fromMin + 2, Math.ceil(Math.min(high, 1.5 * longestMin)));
  const share = (toMin / fromMin) ** (1 / (MOST_LOOKS - 1));
  return [...new Set(Array.from({ length: MOST_LOOKS }, (_, at) => Math.round(fromMin * share ** at)))];
}

function aroundText({ min, interval95: [low, high] }: Moment): string {
  const shown = (minutes: number): string => String(Math.round(minutes));
  if (min >= NEVER_MIN) return "longer than anybody waits, if at all: make the slab thinner";
  return `about ${shown(min)} min (${shown(low)} ${high >= NEVER_MIN ? "or more" : `to ${shown(high)}`})`;
}

/** A slab, or a filling of wells, by its thickness beside the other one. */
function slabName(slabs: readonly PlannedSlab[], at: number, { form }: KitchenVariant): string {
  const isThicker = slabs.length > 1 && slabs[at].thicknessMm > slabs[1 - at].thicknessMm;
  if (form === "batter") return slabs.length === 1 ? "the filling" : `the ${isThicker ? "higher" : "lower"} filling`;
  return slabs.length === 1 ? "the slab" : `the ${isThicker ? "thicker" : "thinner"} slab`;
}

interface LoadStepOptions {
  readonly load: PlannedLoad;
  readonly at: number;
  readonly loads: readonly PlannedLoad[];
  readonly slabs: readonly PlannedSlab[];
  readonly variant: KitchenVariant;
}

function loadStep({ load, at, loads, slabs, variant }: LoadStepOptions): PlanStep {
  const count = load.pieces === 1 ? "one piece" : `${load.pieces} pieces`;
  const from = slabs.length === 1 ? "" : ` of ${slabName(slabs, load.slab, variant)}`;
  const begin = `Load ${at + 1}, ${count}${from}:`;
  const watched = loads.findIndex((other) => other.slab === load.slab && other.purpose === "watched");
  const sentence = {
    early: `${begin} out at ${load.takeOutMin} min, while the core still climbs; not to be eaten.`,
    watched: `${begin} look at ${looksText(load.looksMin)}, and out at the first look at which ${load.pieces === 1 ? "it is" : "they are"} crisp, at ${load.takeOutMin} min at the latest; write down that look and the one before.`,
    late: `${begin} out a quarter later than load ${watched + 1} was, at about ${load.takeOutMin} min.`,
  }[load.purpose];
  return { of: "load", sentence };
}

function sentenceCase(words: string): string {
  return `${words[0].toUpperCase()}${words.slice(1)}`;
}

function between(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
