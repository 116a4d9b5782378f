import type { Trial } from "../trial";

/**
 * Pieces that lose more than this in a reheat have a slip in one of their weights (%): our judgement. Of frozen potato
 * products the thinnest lose 30 % (USDA SR28, household weights before and after).
 */
const MOST_LOSS_PERCENT = 50;

/**
 * Share of their mass that a trial's pieces lost (%): 100 (1 − after/before). `null` where they were not weighed twice, or
 * where a weight is a slip, as no reheat takes half of a piece. What pieces ought to weigh does not matter here: before and
 * after are of the same ones.
 */
export function lossOfTrial({ massBeforeG, massAfterG }: Trial): number | null {
  if (massBeforeG === null || massAfterG === null) return null;
  const lossPercent = 100 * (1 - massAfterG / massBeforeG);
  return lossPercent > MOST_LOSS_PERCENT ? null : lossPercent;
}
