import { notNegative, positive } from "../check/check";

/** What `trueRetention` works from. */
export interface TrueRetentionOptions {
  /** content of the raw food, in any unit per gram or per 100 g */
  readonly contentBefore: number;
  /** content of the cooked food, in the same unit */
  readonly contentAfter: number;
  /** mass before (g) */
  readonly massBeforeG: number;
  /** mass of the same food after (g) */
  readonly massAfterG: number;
}

/**
 * True retention of a nutrient, after Murphy, Criner & Gray (1975, from memory): what is left of it (%), with the loss
 * of mass accounted for.
 *
 * TR % = 100 · (N_after · m_after) / (N_before · m_before)
 *
 * @param options content and mass before and after
 * @returns retention (%)
 * @example
 * trueRetention({ contentBefore: 9, contentAfter: 10.8, massBeforeG: 100, massAfterG: 78.5 }); // → 94.2
 */
export function trueRetention(options: TrueRetentionOptions): number {
  const contentBefore = positive(options.contentBefore, "trueRetention: contentBefore", "");
  const contentAfter = notNegative(options.contentAfter, "trueRetention: contentAfter", "");
  const massBeforeG = positive(options.massBeforeG, "trueRetention: massBeforeG", "g");
  const massAfterG = positive(options.massAfterG, "trueRetention: massAfterG", "g");
  return (100 * contentAfter * massAfterG) / (contentBefore * massBeforeG);
}
