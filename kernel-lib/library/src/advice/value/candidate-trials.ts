import { fail } from "../../check/check";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import { modePiece } from "../../crisp/window/draw-pieces";
import { basisOf, momentsOf, NEVER_MIN, type SettledSetting } from "../../crisp/window/window-setting";
import type { Pan } from "../../pan/pan";
import type { Appliance } from "../../trials/appliance";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { dialSetting } from "../../units/dial-setting";
import { SETPOINT_STEP_K } from "../../units/setpoint-step";
import type { KitchenUnits } from "../../units/unit-table";
import { LEVEL_FULL, type PlannedSlab, plannedSlab, slabKey } from "../trial/planned-slab";
import { isWithinClocks, withinClocks } from "../trial/within-clocks";
import type { KitchenWindow } from "../window/crisp-window";
import { piecesOnFloor } from "../window/load-plan";

/** A trial that this kitchen can run. */
export interface PossibleTrial {
  readonly slab: PlannedSlab;
  /** pieces that go in together */
  readonly pieces: number;
  /** loads that the slab gives */
  readonly loads: number;
  readonly setting: SettledSetting;
  readonly timeMin: number;
  readonly looksMin: readonly number[];
  readonly probe: boolean;
}

/** What `candidateTrials` works from. */
export interface CandidateTrialsOptions {
  readonly kitchen: Kitchen;
  readonly window: KitchenWindow;
  /** slabs beside those of the window's thickness that must be among them */
  readonly slabs?: readonly PlannedSlab[];
  /** settings of the dial to try (°C); the window's and one step to either side unless given */
  readonly setpointsC?: readonly number[];
  /** ids of pans that may not be used, and `"probe"` where there is none */
  readonly without?: readonly string[];
}

/** Thickness of a slab over the window's, thin to thick; our judgement. */
const SHARES = [0.6, 0.75, 0.87, 1, 1.15, 4 / 3, 1.6] as const;
/** The thinnest and thickest slab of a trial (mm); our judgement. */
const [THINNEST_MM, THICKEST_MM] = [3, 40];
/** Taken out at these shares of the time at which it should be safe and crisp; our judgement. */
const EARLY_TO_LATE = [0.5, 0.7, 0.85, 1, 1.15, 1.3] as const;
/** Where the crisp time is open by more than this factor, looks go over the range of it, and that is at most the second; our judgement. */
const [WIDE, MOST_APART] = [2, 4];
/** A crowded floor; our judgement. */
const CROWDED = 0.9;
/** Slabs of one thickness within this share are alike. */
const ALIKE = 0.04;

/**
 * Every trial of a variant that its kitchen can run, in a coarse net: slabs thin to thick on its own pan and on the one that
 * takes least mix, settings of its dial, loads loose and crowded, times of taking out early to late with looks before, with
 * the probe or without.
 */
export function candidateTrials(options: CandidateTrialsOptions): readonly PossibleTrial[] {
  const { kitchen, window, without = [] } = options;
  const { setting } = window;
  const variant = variantOf(kitchen, window.variantId);
  const appliance = applianceOf(kitchen, setting.applianceId);
  const known = [...kitchen.pans.map(({ id }) => id), "probe"];
  for (const name of without)
    if (!known.includes(name))
      fail("nextTrial: without", `must name a pan of the kitchen or the probe (${known.join(", ")})`, name);
  const probe = !without.includes("probe");
  const slabs = slabsOf(options, variant, without);
  const setpointsC = (options.setpointsC ?? dialSettings(setting.setpointC, kitchen.units, 1)).filter((setpointC) =>
    isWithinClocks({ thicknessMm: 10, sidesMm: [40, 40], setpointC }),
  );
  const own = slabs.reduce<PlannedSlab | null>(
    (near, slab) =>
      near === null || offBy(slab, setting.thicknessMm) < offBy(near, setting.thicknessMm) ? slab : near,
    null,
  );
  return slabs.flatMap((slab) =>
    setpointsC.flatMap((setpointC) => {
      const isOwn = slab === own && setpointC === nearestOf(setpointsC, setting.setpointC);
      const loads = [...new Set([setting.loadFraction, ...(isOwn ? [LOOSE_LOAD, CROWDED] : [])])];
      return loads.flatMap((loadFraction) =>
        trialsOf({
          window,
          slab,
          appliance,
          setpointC,
          loadFraction,
          probe,
          isPlain: loadFraction === setting.loadFraction,
        }),
      );
    }),
  );
}

/** Settings of the dial around one, so many steps to either side (°C). */
export function dialSettings(setpointC: number, units: KitchenUnits, steps: number): readonly number[] {
  const settings = Array.from({ length: 2 * steps + 1 }, (_, at) =>
    dialSetting(setpointC + (at - steps) * SETPOINT_STEP_K[units], units),
  ).filter((one) => isWithinClocks({ thicknessMm: 10, sidesMm: [40, 40], setpointC: one }));
  return settings.length === 0 ? [withinClocks({ thicknessMm: 10, sidesMm: [40, 40], setpointC }).setpointC] : settings;
}

/** Slabs thin to thick, each on the window's pan and on the pan of its kind that takes least mix for it; none twice. */
function slabsOf(
  { kitchen, window, slabs = [] }: CandidateTrialsOptions,
  variant: KitchenVariant,
  without: readonly string[],
): readonly PlannedSlab[] {
  const { thicknessMm } = window.setting;
  const pan = panOf(kitchen, window.panId ?? variant.panId);
  const kind = (one: Pan): boolean => (one.shape === "wells") === (pan.shape === "wells");
  const pans = kitchen.pans.filter((one) => kind(one) && !without.includes(one.id));
  const found = new Map<string, PlannedSlab>();
  const keep = (slab: PlannedSlab): void => {
    if (isWithinClocks({ ...slab, setpointC: window.setting.setpointC })) found.set(slabKey(slab), slab);
  };
  for (const slab of slabs) if (!without.includes(slab.panId)) keep(slab);
  for (const share of SHARES) {
    const wantedMm = Math.min(THICKEST_MM, Math.max(THINNEST_MM, share * thicknessMm));
    const planned = pans.flatMap((place) => {
      const full = share > 1 ? undefined : LEVEL_FULL;
      const slab = plannedSlab({ kitchen, variant, pan: place, thicknessMm: wantedMm, full });
      return slab === null || offBy(slab, wantedMm) > ALIKE ? [] : [slab];
    });
    const least = planned.reduce<PlannedSlab | null>(
      (small, slab) => (small === null || slab.batchG < small.batchG ? slab : small),
      null,
    );
    for (const slab of planned) if (slab === least || slab.panId === pan.id) keep(slab);
  }
  return [...found.values()];
}

interface TrialsOfOptions {
  readonly window: KitchenWindow;
  readonly slab: PlannedSlab;
  readonly appliance: Appliance;
  readonly setpointC: number;
  readonly loadFraction: number;
  readonly probe: boolean;
  /** the load of the window: trials without the probe are offered too */
  readonly isPlain: boolean;
}

/** Trials of one slab at one setting and load: taken out early to late. */
function trialsOf(options: TrialsOfOptions): readonly PossibleTrial[] {
  const { window, slab, appliance, setpointC, probe, isPlain } = options;
  const pieceMm2 = slab.sidesMm[0] * slab.sidesMm[1];
  const pieces = Math.max(1, Math.min(slab.pieces, piecesOnFloor(appliance, options.loadFraction, slab.sidesMm)));
  const loadFraction = Math.min(options.loadFraction, 1.2, (pieces * pieceMm2) / (100 * appliance.floorCm2));
  const setting: SettledSetting = {
    ...window.setting,
    thicknessMm: slab.thicknessMm,
    sidesMm: slab.sidesMm,
    setpointC,
    loadFraction,
    piecesPerLoad: pieces,
  };
  const { calibration } = window;
  const basis = basisOf(calibration, setting);
  const moments = momentsOf(basis, modePiece(calibration, setting), slab.thicknessMm, setting);
  const opensMin = Math.max(moments.coreMin, moments.crispMin);
  const middleMin = Math.min(opensMin >= NEVER_MIN ? moments.coreMin : opensMin, 1.5 * setting.longestMin);
  const climbing = moments.coreMin < 0.75 * middleMin ? [moments.coreMin / middleMin] : [];
  const shares = [...climbing, ...EARLY_TO_LATE];
  const [low, high] = window.crisp.interval95;
  const looksFor = (timeMin: number, share: number): readonly number[] =>
    share >= 1 && high > WIDE * low ? widerLooks(timeMin, Math.min(MOST_APART, high / low)) : looksBefore(timeMin);
  const times = new Map(shares.map((share) => [Math.max(1, Math.round(2 * share * middleMin) / 2), share] as const));
  return [...times].flatMap(([timeMin, share]) => {
    const common = {
      slab,
      pieces,
      loads: Math.max(1, Math.floor(slab.pieces / pieces)),
      setting,
      timeMin,
      looksMin: looksFor(timeMin, share),
    };
    const unread = isPlain && share === 1 ? [{ ...common, probe: false }] : [];
    return probe ? [{ ...common, probe: true }, ...unread] : [{ ...common, probe: false }];
  });
}

/** Three looks, the last at taking out, a tenth of the time apart and a minute at least: whole minutes a cook can keep. */
export function looksBefore(timeMin: number): readonly number[] {
  const apartMin = Math.max(1, Math.round(0.1 * timeMin));
  return [2, 1, 0].map((steps) => timeMin - steps * apartMin).filter((look) => look >= 1);
}

/** Five looks at most over the range in which pieces may turn crisp, the last at taking out: whole minutes from the one before. */
function widerLooks(timeMin: number, range: number): readonly number[] {
  const back = Array.from({ length: 5 }, (_, at) => Math.round(timeMin - timeMin * range ** (at / -4)));
  return [...new Set(back)]
    .map((minutes) => timeMin - minutes)
    .filter((look) => look >= 1)
    .toReversed();
}

function offBy({ thicknessMm }: PlannedSlab, wantedMm: number): number {
  return Math.abs(Math.log(thicknessMm / wantedMm));
}

function nearestOf(values: readonly number[], wanted: number): number {
  return values.reduce((near, value) => (Math.abs(value - wanted) < Math.abs(near - wanted) ? value : near), values[0]);
}
