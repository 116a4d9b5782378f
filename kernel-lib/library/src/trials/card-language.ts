/** The languages that cards and labels can be in: English and Spanish. */
export const CARD_LANGUAGES = ["en", "es"] as const;

/** The language of what leaves the kitchen. */
export type CardLanguage = (typeof CARD_LANGUAGES)[number];
