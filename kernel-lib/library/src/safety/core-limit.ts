import { fail } from "../check/check";
import { ownValue } from "../check/own-value";
import type { FoodClass, FoodState } from "../food/formula/formula";

/** The core temperature that a food must reach, with where it is from and what goes with it. */
export interface CoreLimit {
  readonly kind: "core limit";
  /** `null` when the class was not stated: the strictest limit then stands */
  readonly foodClass: FoodClass | null;
  /** `null` when none was stated and nothing raw of an animal is in it */
  readonly state: FoodState | null;
  /** whether it is raw food, and labelled so, until its core has reached the limit */
  readonly raw: boolean;
  /** every part of the piece must reach this (°C): the source's value rounded up to half a degree */
  readonly limitC: number;
  /** the same as printed by the source (°F) */
  readonly limitF: number;
  /** and must stay at or above it for this long (s); 0 when reaching it is enough */
  readonly holdS: number;
  /** names of the ingredients that ask for this class; empty when it was declared, or when nothing raw is in it */
  readonly from: readonly string[];
  readonly source: string;
  /** to be printed wherever a time or a setting is */
  readonly caution: string;
}

const LOCAL =
  "Local food codes and a licensed process authority come first. Check the thickest piece, in the worst spot of a full basket, with a thermometer.";
const RAW =
  "Raw inside until its core has reached the limit: a set or browned coating proves nothing. Par-cooked below the limit it is sold and labelled as raw, to be cooked thoroughly, and is cooled at once.";
const COOLED =
  "Counts as cooked only if every core reached its class's limit before, and was cooled from 57 to 21 °C (135 to 70 °F) within 2 h and to 5 °C (41 °F) within 6 h in all (FDA Food Code 3-501.14); otherwise it is raw.";
const CONSUMER = "US consumer minimum internal temperatures (foodsafety.gov)";

interface Row {
  readonly limitC: number;
  readonly limitF: number;
  readonly holdS: number;
  readonly source: string;
  /** whether food of this class is raw where no state says otherwise */
  readonly raw: boolean;
}

const REHEATED: Row = {
  limitC: 74,
  limitF: 165,
  holdS: 0,
  source: `${CONSUMER}: leftovers and casseroles 165 °F; FDA Food Code 3-403.11, reheating for hot holding`,
  raw: false,
};

const LIMITS: Readonly<Record<FoodClass, Row>> = {
  poultry: {
    ...REHEATED,
    source: `${CONSUMER}: poultry, all forms, 165 °F; FDA Food Code 3-401.11, poultry and stuffed food`,
    raw: true,
  },
  groundMeat: { limitC: 71.5, limitF: 160, holdS: 0, source: `${CONSUMER}: ground meats 160 °F`, raw: true },
  fish: {
    limitC: 68.5,
    limitF: 155,
    holdS: 17,
    source:
      "FDA Food Code 3-401.11(A)(2), comminuted fish 155 °F for 17 s; crustaceans and molluscs are fish (21 CFR 123.3); the 145 °F of consumer charts is for whole fillets, and their look of cooked shellfish for whole ones, not for a formed slab",
    raw: true,
  },
  egg: {
    limitC: 71.5,
    limitF: 160,
    holdS: 0,
    source: `${CONSUMER}: egg dishes 160 °F; FDA Food Code 3-401.11(A)(2) has 155 °F for 17 s for pooled raw eggs, and the stricter stands`,
    raw: true,
  },
  wholeMeat: {
    limitC: 71.5,
    limitF: 160,
    holdS: 0,
    source: `${CONSUMER}: ground meats 160 °F, taken because pieces pressed into a slab are not intact cuts (those have 145 °F and 3 min of rest)`,
    raw: true,
  },
  plant: REHEATED,
  readyToEat: REHEATED,
};

const STATES: readonly FoodState[] = ["raw", "par-cooked", "cooked and cooled"];

/**
 * The core temperature that a formed piece must reach, by its food class and state, with source and caution.
 *
 * Only values read in a public copy of their source are here; a class without one has the strictest, 74 °C / 165 °F, and
 * so has whatever was cooked and cooled before. Par-cooked food is raw food.
 *
 * No dwell time of an agency's tables, which would allow a lower temperature held longer, is used: the USDA FSIS cooking
 * guideline (Revised Appendix A, FSIS-GD-2021-14) asks for humidity in ovens that move their air, which an air fryer does
 * not give, and does not cover products sold partially cooked; nor were its cells confirmed against the agency's print.
 * The 17 s of fish are no such allowance: they are the Food Code's own value for comminuted fish, with its temperature.
 *
 * From memory: 3-403.11's 165 °F, and that 3-401.11 asks for no hold at poultry's 165 °F (editions before 2017, which were
 * read, have 15 s; the consumer chart, read too, has none). All other values were read in public copies.
 *
 * @param foodClass as the formula states it; left out, the strictest limit, and the food is taken as raw
 * @param state left out: raw for a raw class, else none. `formulaLimit` reads class and state from a formula
 * @returns limit (°C, °F), time to hold it (s), raw or not, source, caution
 *
 * @example
 * coreLimit("poultry").limitC; // → 74
 * coreLimit("groundMeat").limitF; // → 160
 * coreLimit("fish").holdS; // → 17
 * coreLimit("fish", "cooked and cooled").limitF; // → 165
 * coreLimit().limitF; // → 165
 *
 * Reference: foodsafety.gov, safe minimum internal temperatures; FDA Food Code, 3-401.11, 3-403.11 and 3-501.14.
 */
export function coreLimit(foodClass?: FoodClass, state?: FoodState): CoreLimit {
  const classRow = foodClass === undefined ? REHEATED : ownValue(LIMITS, foodClass);
  if (classRow === undefined)
    fail("coreLimit: foodClass", `must be one of ${Object.keys(LIMITS).join(", ")}`, foodClass);
  if (state !== undefined && !STATES.includes(state))
    fail("coreLimit: state", `must be one of ${STATES.join(", ")}`, state);
  const settled = state ?? (classRow.raw || foodClass === undefined ? "raw" : null);
  const cooled = settled === "cooked and cooled";
  const row = cooled ? REHEATED : classRow;
  const raw = settled !== null && !cooled;
  const hold = row.holdS > 0 ? `, held for ${row.holdS} s,` : "";
  const goal = `Core at least ${row.limitC} °C (${row.limitF} °F)${hold} in every piece.`;
  return Object.freeze({
    kind: "core limit",
    foodClass: foodClass ?? null,
    state: settled,
    raw,
    limitC: row.limitC,
    limitF: row.limitF,
    holdS: row.holdS,
    from: Object.freeze([]),
    source: row.source,
    caution: [goal, ...(raw ? [RAW] : cooled ? [COOLED] : []), LOCAL].join(" "),
  });
}
