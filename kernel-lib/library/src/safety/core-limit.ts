import { fail } from "../check/check";
import type { FoodClass } from "../food/formula/formula";

/** The core temperature that a class of food must reach, with where it is from and what goes with it. */
export interface CoreLimit {
  readonly kind: "core limit";
  /** `null` when the class was not stated: the strictest limit then stands */
  readonly foodClass: FoodClass | null;
  /** every part of the piece must reach this (°C): the source's value rounded up to half a degree */
  readonly limitC: number;
  /** the same as printed by the source (°F) */
  readonly limitF: number;
  /** and must stay at or above it for this long (s); 0 when reaching it is enough */
  readonly holdS: number;
  readonly source: string;
  /** to be printed wherever a time or a setting is */
  readonly caution: string;
}

const LOCAL =
  "Local food codes and a licensed process authority come first. Check the thickest piece, in the worst spot of a full basket, with a thermometer.";
const RAW =
  "Raw inside until its core has reached the limit: a set or browned coating proves nothing. Par-cooked below the limit it is sold and labelled as raw, to be cooked thoroughly, and is cooled at once.";
const CONSUMER = "US consumer minimum internal temperatures (foodsafety.gov)";

interface Row {
  readonly limitC: number;
  readonly limitF: number;
  readonly holdS: number;
  readonly source: string;
  readonly raw: boolean;
}

const STRICTEST: Row = {
  limitC: 74,
  limitF: 165,
  holdS: 0,
  source: `${CONSUMER}: leftovers and casseroles 165 °F; FDA Food Code 3-403.11, reheating for hot holding`,
  raw: false,
};

const LIMITS: Readonly<Record<FoodClass, Row>> = {
  poultry: {
    ...STRICTEST,
    source: `${CONSUMER}: poultry, all forms, 165 °F; FDA Food Code 3-401.11, poultry and stuffed food`,
    raw: true,
  },
  groundMeat: { limitC: 71.5, limitF: 160, holdS: 0, source: `${CONSUMER}: ground meats 160 °F`, raw: true },
  fish: {
    limitC: 68.5,
    limitF: 155,
    holdS: 17,
    source:
      "FDA Food Code 3-401.11, comminuted fish 155 °F for 17 s (the 17 s from memory); the 145 °F of consumer charts is for whole fillets, not for a formed slab",
    raw: true,
  },
  egg: { limitC: 71.5, limitF: 160, holdS: 0, source: `${CONSUMER}: egg dishes 160 °F`, raw: true },
  wholeMeat: {
    limitC: 71.5,
    limitF: 160,
    holdS: 0,
    source: `${CONSUMER}: ground meats 160 °F, taken because pieces pressed into a slab are not intact cuts (those have 145 °F and 3 min of rest)`,
    raw: true,
  },
  plant: STRICTEST,
  readyToEat: STRICTEST,
};

/**
 * The core temperature that a formed piece must reach, by its food class, with source and caution.
 *
 * Only values read in a public copy of their source are here; a class without one has the strictest, 74 °C / 165 °F.
 * Time-and-temperature tables that allow less are left out: their cells were not confirmed against the agency's print.
 *
 * @param foodClass as the formula states it; left out, the strictest limit
 * @returns limit (°C, °F), time to hold it (s), source, caution
 *
 * @example
 * coreLimit("poultry").limitC; // → 74
 * coreLimit("groundMeat").limitF; // → 160
 * coreLimit().limitF; // → 165
 *
 * Reference: foodsafety.gov, safe minimum internal temperatures; FDA Food Code, 3-401.11 and 3-403.11.
 */
export function coreLimit(foodClass?: FoodClass): CoreLimit {
  const row = foodClass === undefined ? STRICTEST : LIMITS[foodClass];
  if (row === undefined) fail("coreLimit: foodClass", `must be one of ${Object.keys(LIMITS).join(", ")}`, foodClass);
  const hold = row.holdS > 0 ? `, held for ${row.holdS} s,` : "";
  const goal = `Core at least ${row.limitC} °C (${row.limitF} °F)${hold} in every piece.`;
  return Object.freeze({
    kind: "core limit",
    foodClass: foodClass ?? null,
    limitC: row.limitC,
    limitF: row.limitF,
    holdS: row.holdS,
    source: row.source,
    caution: [goal, ...(row.raw ? [RAW] : []), LOCAL].join(" "),
  });
}
