/** A lowest core temperature with its caution and source. */
export interface HeatedCore {
  /** [°C] */
  readonly limitC: number;
  readonly caution: string;
  readonly source: string;
}

/** What this library asks of a core unless told otherwise: 74 °C, held for no time at all. */
export const HEATED_CORE: HeatedCore = Object.freeze({
  limitC: 74,
  caution:
    "A calculated time is no measurement: probe the coldest part of the thickest piece, and follow your local food code and licensed practice where they ask for more.",
  source:
    "US FDA Food Code 3-401.11 and USDA FSIS safe minimum for poultry and for reheating, 165 °F (73.9 °C) reached at once; from memory",
});
