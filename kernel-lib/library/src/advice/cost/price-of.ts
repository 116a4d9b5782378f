import type { Ingredient } from "../../food/ingredient/ingredient";
import type { Kitchen } from "../../trials/kitchen";
import { daysBetween, lastDay } from "../../trials/last-day";

/** What an ingredient costs, and how sure that is. */
export interface Price {
  /** in the kitchen's own currency */
  readonly perKg: number;
  /** standard uncertainty (%) */
  readonly doubtPercent: number;
  /** days since it was the price; null where nobody noted when */
  readonly ageDays: number | null;
}

/** A price as it was paid may be off by this from shop to shop, one that nobody dated by the second, and each year adds the third (%); our judgement. */
const FRESH_PERCENT = 3;
const UNDATED_PERCENT = 10;
const YEARLY_PERCENT = 8;

/**
 * Price of an ingredient: of its pack in `pantry.csv`, else as `ingredients.csv` has it. Its doubt grows with its age: prices
 * some months old may stand as they were, those of a year ago rarely do.
 *
 * u = √(3² + (8·years)²) %; 10 % where nobody noted when.
 *
 * @param asOf the day on which it is asked, `2026-03-14`; the last day that the kitchen's files name unless given
 * @returns null where there is no price
 */
export function priceOf(kitchen: Kitchen, { id, costPerKg }: Ingredient, asOf?: string): Price | null {
  const item = (kitchen.pantry ?? []).find(({ ingredientId }) => ingredientId === id);
  if (item === undefined || item.packPrice === null || item.packG === null)
    return costPerKg === null ? null : { perKg: costPerKg, doubtPercent: UNDATED_PERCENT, ageDays: null };
  const perKg = (1000 * item.packPrice) / item.packG;
  const day = asOf ?? lastDay(kitchen);
  if (item.pricedOn === null || day === null) return { perKg, doubtPercent: UNDATED_PERCENT, ageDays: null };
  const ageDays = Math.max(0, daysBetween(item.pricedOn, day));
  return { perKg, doubtPercent: Math.hypot(FRESH_PERCENT, (YEARLY_PERCENT * ageDays) / 365), ageDays };
}
