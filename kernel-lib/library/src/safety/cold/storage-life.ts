import { fail, positive, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";

/** Time that a pack spent at one temperature; an open door or a warm ride is a step too. */
export interface StorageStep {
  /** −40 to −5 °C */
  readonly temperatureC: number;
  readonly days: number;
}

/** What is in a pack, for how long it keeps its quality. */
export type StoredFood = "raw poultry" | "cooked poultry" | "ground meat" | "breaded fish" | "vegetable";

/** A pack's past, and what it is. */
export interface StorageLifeOptions {
  readonly steps: readonly StorageStep[];
  /** gives the life at −18 °C by `STORAGE_LIVES`; or say `lifeDays` */
  readonly food?: StoredFood;
  /** days at −18 °C in which its quality is used up, in your own packs and by your own panel */
  readonly lifeDays?: number;
  /** how many times shorter the life is 10 K warmer; default 3, between 2 and 4 (from memory) */
  readonly q10?: number;
  /** life in this pack over that in a close, tight one: 1 (default); 0.5 where the pack is loose or full of air (common practice, no source) */
  readonly packagingFactor?: number;
  /** where it is kept from now on (°C); default −18 */
  readonly keptAtC?: number;
}

/** How much of a pack's quality is used up. */
export interface StorageLife {
  readonly kind: "storage life";
  /** 0 fresh, 1 used up */
  readonly used: number;
  /** the same with a Q10 of 2 and of 4 */
  readonly usedRange: readonly [number, number];
  /** days that are left where it is kept; 0 when it is used up */
  readonly leftDays: number;
  readonly leftDaysRange: readonly [number, number];
  /** the life at −18 °C that this rests on (days) */
  readonly lifeDays: number;
  readonly source: string;
  readonly caution: string;
}

const HOME = "home freezer guides that cite public agencies, advice only";
const MEMORY = "practical storage lives of the International Institute of Refrigeration, from memory, low confidence";

/** Days at −18 °C until the quality of a formed, coated piece is used up, with where the figure is from: formed pieces are of ground food. */
export const STORAGE_LIVES: Readonly<Record<StoredFood, { readonly days: number; readonly source: string }>> =
  freezeDeep({
    "raw poultry": { days: 91, source: `3 months, the short end of 3 to 4 for ground turkey: ${HOME}` },
    "cooked poultry": { days: 122, source: `4 months, cooked poultry: ${HOME}` },
    "ground meat": { days: 91, source: `3 months, the short end of 3 to 4 for ground meat: ${HOME}` },
    "breaded fish": { days: 91, source: `3 months, breaded fish: ${HOME}` },
    vegetable: {
      days: 365,
      source: `12 months, our judgement: half of what is said of pre-fried potato; ${MEMORY}`,
    },
  });

const REFERENCE_C = -18;

/**
 * How much of a frozen pack's quality is used up by its time and temperatures (time, temperature and tolerance; the additive
 * rule of W. B. Van Arsdel and others, 1969, from memory).
 *
 * used = Σ days(T) / life(T), life(T) = life(−18 °C)·Q10^((−18 − T)/10).
 *
 * @returns share used, what is left at the temperature it is kept at, each with the range of a Q10 from 2 to 4
 *
 * Range: −40 to −5 °C. Warmer food has begun to thaw: then the rule says nothing, and the safety of the food is the question.
 *
 * @example
 * const steps = [{ temperatureC: -18, days: 30 }, { temperatureC: -10, days: 5 }];
 * storageLife({ steps, lifeDays: 365, q10: 3 }).used; // → 0.115181
 */
export function storageLife(options: StorageLifeOptions): StorageLife {
  const where = "storageLife";
  const { steps, food, q10 = 3, packagingFactor = 1, keptAtC = REFERENCE_C } = options;
  within(q10, 1.2, 8, `${where}: q10`, "");
  within(packagingFactor, 0.1, 1, `${where}: packagingFactor`, "");
  within(keptAtC, -40, -5, `${where}: keptAtC`, "°C");
  for (const [at, { temperatureC, days }] of steps.entries()) {
    within(temperatureC, -40, -5, `${where}: steps ${at + 1}: temperatureC`, "°C");
    within(days, 0, 10_000, `${where}: steps ${at + 1}: days`, "");
  }
  const known = food === undefined || !Object.hasOwn(STORAGE_LIVES, food) ? undefined : STORAGE_LIVES[food];
  if (options.lifeDays === undefined && known === undefined)
    fail(`${where}: food`, `must be one of ${Object.keys(STORAGE_LIVES).join(", ")}, or lifeDays be given`, food);
  const lifeDays = positive(options.lifeDays ?? (known?.days as number), `${where}: lifeDays`, "") * packagingFactor;
  const lifeAt = (celsius: number, by: number): number => lifeDays * by ** ((REFERENCE_C - celsius) / 10);
  const usedBy = (by: number): number =>
    steps.reduce((sum, { temperatureC, days }) => sum + days / lifeAt(temperatureC, by), 0);
  const leftBy = (by: number): number => Math.max(0, 1 - usedBy(by)) * lifeAt(keptAtC, by);
  const range = (read: (by: number) => number): readonly [number, number] => {
    const ends = [read(Math.min(2, q10)), read(q10), read(Math.max(4, q10))].sort((a, b) => a - b);
    return [ends[0], ends[2]];
  };
  const own = options.lifeDays === undefined ? (known?.source as string) : "as given";
  return freezeDeep({
    kind: "storage life" as const,
    used: usedBy(q10),
    usedRange: range(usedBy),
    leftDays: leftBy(q10),
    leftDaysRange: range(leftBy),
    lifeDays,
    source: packagingFactor === 1 ? own : `${own}; times ${packagingFactor} for the pack, common practice, no source`,
    caution:
      "This is quality, not safety. Food that stays frozen at −18 °C (0 °F) stays as safe as it went in; what has thawed and been warmer than 5 °C (41 °F) is for your local food code to judge, not for a date.",
  });
}
