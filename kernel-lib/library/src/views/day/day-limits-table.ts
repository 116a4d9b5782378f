import type { DayPlan } from "../../advice/day/batch-day";
import type { Table } from "../table/table";

/**
 * A batch day against the limits of cooling and of time out of the cold: a row for each product and limit, with the verdict, its
 * figures, and what to do.
 *
 * @example
 * const plan = batchDay({ kitchen: loadKitchen(), batches: [{ variantId: "turkey-sage" }] });
 * dayLimitsTable(plan).rows.map(([, , verdict]) => verdict); // → ["passes", "passes", "passes", "passes"]
 */
export function dayLimitsTable({ limits }: Pick<DayPlan, "limits">): Table {
  const told = limits.flatMap(({ variantName, cooked, ambient, pieces, wash }) => [
    ...(cooked === null ? [] : [{ variantName, limit: "cooling, cooked", check: cooked }]),
    ...(ambient === null ? [] : [{ variantName, limit: "cooling, from warm ingredients", check: ambient }]),
    { variantName, limit: "out of the cold", check: pieces },
    ...(wash === null ? [] : [{ variantName, limit: "wash on the counter", check: wash }]),
  ]);
  return {
    kind: "table",
    title: "Cooling and holding",
    columns: ["product", "limit", "verdict", "how long", "what to do"].map((heading) => ({ heading })),
    rows: told.map(({ variantName, limit, check }) => [
      variantName,
      limit,
      check.verdict,
      "what" in check ? check.sentence.slice(check.what.length + 2) : check.sentence,
      check.todo,
    ]),
    notes: [
      "As planned, in air as slow as its doubt allows. A plan shows what to expect: only a thermometer shows what was.",
      ...new Set(told.flatMap(({ check }) => [`${check.source}.`, check.caution])),
    ],
  };
}
