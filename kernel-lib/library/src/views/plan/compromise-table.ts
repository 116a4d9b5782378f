import type { BestCompromise } from "../../fit/surface/best-compromise";
import type { Table } from "../table/table";

/**
 * What comes of each goal at a compromise, a row a goal.
 *
 * @param compromise from `bestCompromise`
 */
export function compromiseTable({
  goals,
  overall,
  overall95: [low, high],
  chanceAllMet,
  reading,
}: BestCompromise): Table {
  return {
    kind: "table",
    title: "What comes of each goal at the compromise",
    columns: [
      { heading: "goal" },
      { heading: "expected", decimals: 2 },
      { heading: "95 % from", decimals: 2 },
      { heading: "to", decimals: 2 },
      { heading: "met (%)", decimals: 0 },
    ],
    rows: [
      ...goals.map(({ name, value, confidence95: [from, to], met }) => [name, value, from, to, 100 * met]),
      ["all together", null, null, null, 100 * overall],
    ],
    notes: [
      reading,
      `Over draws of the surfaces the goals together are met to ${Math.round(100 * low)} to ${Math.round(100 * high)} %; every one at least in part in ${Math.round(100 * chanceAllMet)} of 100.`,
    ],
  };
}
