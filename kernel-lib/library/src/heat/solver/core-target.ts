import { coreLimit } from "../../safety/core-limit";

/** The core temperature that a calculated heating is to reach, with where it is from and what goes with it. */
export interface CoreTarget {
  /** [°C] */
  readonly limitC: number;
  readonly caution: string;
  readonly source: string;
}

const CALCULATED =
  "A calculated time is no measurement: probe the coldest part of the thickest piece, and follow your local food code and licensed practice where they ask for more.";

/** The caller's limit, or the strictest `coreLimit` where none is given, reached at once. */
export function coreTarget(limitC?: number): CoreTarget {
  const strictest = coreLimit();
  return Object.freeze({
    limitC: limitC ?? strictest.limitC,
    caution: CALCULATED,
    source: limitC === undefined ? strictest.source : "limit given by the caller",
  });
}
