import { GOOD_CHANCE } from "../../crisp/window/card-time";
import type { KitchenWindow } from "../window/crisp-window";

/** A range on a card ends on a half minute. */
const STEP_MIN = 0.5;
/** A narrower range than this is no help to who stands before the oven (min); our judgement. */
const LEAST_MIN = 1;
/** A later time may cost so much of the chance at the card's [-]; our judgement. */
const LATER_COST = 0.02;

/**
 * The latest time that a card may name: rounded down to half a minute, within the accepted time, every moment from the card's time
 * to it with a good chance of success, and no more than two points below the card's. Null where that is less than a minute later.
 *
 * @example
 * latestTime(crispWindow({ kitchen: loadKitchen(), variantId: "beet-lentil" })); // → 13.5
 */
export function latestTime({
  chances,
  recommended,
  setting,
}: Pick<KitchenWindow, "chances" | "recommended" | "setting">): number | null {
  const least = Math.max(GOOD_CHANCE, recommended.success - LATER_COST);
  let latest = recommended.cardMin;
  for (const [at, timeMin] of chances.timesMin.entries()) {
    if (timeMin <= recommended.cardMin) continue;
    if (timeMin > setting.longestMin || chances.success[at] < least) break;
    latest = timeMin;
  }
  const rounded = Math.floor(latest / STEP_MIN + 1e-9) * STEP_MIN;
  return rounded >= recommended.cardMin + LEAST_MIN ? rounded : null;
}
