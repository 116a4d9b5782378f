import type { SettingTruth } from "./setting-truth";
import { TRANSFERS, type Transfer } from "./stored-world";

/** What a tool says of one setting. Times are of the typical piece: the median one, over pieces and loads. */
export interface Forecast {
  /** 95 % intervals (min); an upper end may be Infinity */
  readonly core95: readonly [number, number];
  readonly crisp95: readonly [number, number];
  readonly closes95: readonly [number, number];
  /** from here on every piece of a load is said to be safe (min); null when nothing is said */
  readonly safeFromMin: number | null;
  /** time on the card, or the best guess where there is no card (min); null when there is neither */
  readonly cardMin: number | null;
  /** claimed chance that a piece is safe, crisp and not overdone at that time; null when none is claimed */
  readonly success: number | null;
  /** may the card be printed */
  readonly ready: boolean;
}

/** How one forecast stands to the truth. */
export interface SettingScore {
  readonly transfer: Transfer;
  /** trials in the log behind it */
  readonly trials: number;
  readonly core95: boolean;
  readonly crisp95: boolean;
  readonly closes95: boolean;
  /** middle of each interval over the truth, less 1; infinite when it has no end */
  readonly coreError: number;
  readonly crispError: number;
  readonly closesError: number;
  readonly ready: boolean;
  /** true share of loads that are wholly safe at the card's time; null without a time */
  readonly safeLoads: number | null;
  /** the same at the stated safe time, and the share of pieces that are safe then */
  readonly safeFromLoads: number | null;
  readonly safeFromPieces: number | null;
  /** true share of pieces that are good at the card's time, and the best that any safe time would give */
  readonly success: number | null;
  readonly best: number;
  /** claimed less true success */
  readonly chanceGap: number | null;
}

/** Loads of which so many are wholly safe count as safe. */
export const SAFE_LOADS = 0.99;
/** A log of so many trials must be enough for the setting that was logged. */
export const GOOD_LOG = 12;

/** Share at a time, between the stored ones in a straight line. */
export function shareAt(
  { timesMin }: Pick<SettingTruth, "timesMin">,
  shares: readonly number[],
  timeMin: number,
): number {
  const step = timesMin[1] - timesMin[0];
  const place = Math.min(timesMin.length - 1, Math.max(0, (timeMin - timesMin[0]) / step));
  const at = Math.min(timesMin.length - 2, Math.floor(place));
  return shares[at] + (place - at) * (shares[at + 1] - shares[at]);
}

/** Holds one forecast against the truth of its setting. */
export function scoreSetting(options: {
  readonly transfer: Transfer;
  readonly trials: number;
  readonly truth: SettingTruth;
  readonly forecast: Forecast;
}): SettingScore {
  const { transfer, trials, truth, forecast } = options;
  const { typical } = truth;
  const holds = ([low, high]: readonly [number, number], time: number): boolean => low <= time && time <= high;
  const at = (shares: readonly number[], timeMin: number | null): number | null =>
    timeMin === null ? null : shareAt(truth, shares, timeMin);
  const error = ([low, high]: readonly [number, number], time: number): number => (low + high) / 2 / time - 1;
  const success = at(truth.good, forecast.cardMin);
  return {
    transfer,
    trials,
    core95: holds(forecast.core95, typical.coreMin),
    crisp95: holds(forecast.crisp95, typical.crispMin),
    closes95: holds(forecast.closes95, typical.closesMin),
    coreError: error(forecast.core95, typical.coreMin),
    crispError: error(forecast.crisp95, typical.crispMin),
    closesError: error(forecast.closes95, typical.closesMin),
    ready: forecast.ready,
    safeLoads: at(truth.safeLoads, forecast.cardMin),
    safeFromLoads: at(truth.safeLoads, forecast.safeFromMin),
    safeFromPieces: at(truth.safePieces, forecast.safeFromMin),
    success,
    best: bestSafe(truth),
    chanceGap: success === null || forecast.success === null ? null : forecast.success - success,
  };
}

/** The largest share of good pieces at any time at which loads are safe. */
export function bestSafe(truth: Pick<SettingTruth, "good" | "safeLoads">): number {
  return Math.max(0, ...truth.good.filter((_, at) => truth.safeLoads[at] >= SAFE_LOADS));
}

/** One measured row, as `npm run bench` prints it. */
export interface ScoreRow {
  readonly name: string;
  /** null when nothing was there to count */
  readonly value: number | null;
  readonly unit: string;
  readonly note: string;
}

/**
 * The rows of the worlds. Intervals: the share that hold in the transfer kind where fewest do, all kinds in the note with the median
 * error of the intervals' middles.
 * Success: mean true over mean best possible, ready or not, after `GOOD_LOG` trials or more.
 */
export function scoreRows(scores: readonly SettingScore[]): readonly ScoreRow[] {
  const interval = (name: "core" | "crisp" | "closes"): ScoreRow => {
    const kinds = TRANSFERS.flatMap((transfer) => {
      const those = scores.filter((score) => score.transfer === transfer);
      const held = share(those, (score) => score[`${name}95`]);
      if (held === null) return [];
      const errors = those.map((score) => score[`${name}Error`]).sort((one, two) => one - two);
      return [{ transfer, held, off: errors[errors.length >> 1] }];
    });
    const told = kinds.map(({ transfer, held, off }) => `${transfer} ${held.toFixed(2)} (${percent(off)})`);
    return {
      name: `worlds.${name}95`,
      value: kinds.length === 0 ? null : Math.min(...kinds.map(({ held }) => held)),
      unit: "share",
      note: `fewest of any kind; ${told.join(", ")}; all ${shown(share(scores, (score) => score[`${name}95`]))}`,
    };
  };
  const ready = scores.filter((score) => score.ready);
  const stated = scores.filter((score) => score.safeFromLoads !== null);
  const own = scores.filter(({ transfer, trials }) => transfer === "own" && trials >= GOOD_LOG);
  const nearPan = scores.filter(({ transfer, trials }) => transfer === "smaller pan" && trials >= GOOD_LOG);
  const gaps = ready.flatMap(({ chanceGap }) => (chanceGap === null ? [] : [chanceGap]));
  const loads = ready.flatMap(({ safeLoads }) => (safeLoads === null ? [] : [safeLoads]));
  const pieces = stated.map(({ safeFromPieces }) => safeFromPieces as number);
  return [
    interval("core"),
    interval("crisp"),
    interval("closes"),
    {
      name: "worlds.safeLoads",
      value: share(ready, ({ safeLoads }) => (safeLoads ?? 0) >= SAFE_LOADS),
      unit: "share",
      note: `of ${ready.length} ready cards (${scores.length} asked) those with at least ${SAFE_LOADS} of loads wholly safe; worst ${shown(least(loads))}`,
    },
    {
      name: "worlds.safeFrom",
      value: share(stated, ({ safeFromLoads }) => (safeFromLoads as number) >= SAFE_LOADS),
      unit: "share",
      note: `of ${stated.length} stated safe times; of pieces safe then: mean ${shown(mean(pieces))}, worst ${shown(least(pieces))}`,
    },
    {
      name: "worlds.chanceGap",
      value: mean(gaps.map(Math.abs)),
      unit: "chance",
      note: `mean |claimed − true| of ${gaps.length} ready cards; claimed less true ${shown(mean(gaps))}`,
    },
    {
      name: "worlds.readyShare",
      value: share(own, (score) => score.ready),
      unit: "share",
      note: `of ${own.length} logged settings with ${GOOD_LOG} trials or more`,
    },
    successRow("worlds.successOwn", own),
    successRow("worlds.successNearPan", nearPan),
  ];
}

function successRow(name: string, scores: readonly SettingScore[]): ScoreRow {
  const timed = scores.filter(({ success }) => success !== null);
  const truth = mean(timed.map(({ success }) => success as number));
  const best = mean(timed.map((score) => score.best));
  return {
    name,
    value: truth === null || best === null ? null : truth / best,
    unit: "share",
    note: `mean true ${shown(truth)} over mean best ${shown(best)}, ${timed.length} times given for ${scores.length} settings`,
  };
}

function share<T>(of: readonly T[], holds: (each: T) => boolean): number | null {
  return of.length === 0 ? null : of.filter(holds).length / of.length;
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function least(values: readonly number[]): number | null {
  return values.length === 0 ? null : Math.min(...values);
}

const percent = (part: number): string => `${part < 0 ? "−" : "+"}${Math.abs(100 * part).toFixed(0)} %`;

const shown = (value: number | null): string => (value === null ? "none" : value.toFixed(3));
