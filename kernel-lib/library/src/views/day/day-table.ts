import type { DayPlan } from "../../advice/day/batch-day";
import { clockText } from "../../units/clock-text";
import type { Table } from "../table/table";
import { stepText } from "./step-text";

/**
 * A batch day as a table: every step with its time, when to look at a wait and by when it is over in slow air, and by how much
 * it may begin later.
 *
 * @example
 * const plan = batchDay({ kitchen: loadKitchen(), batches: [{ variantId: "beet-lentil" }] });
 * dayTable(plan).columns.length; // → 6
 */
export function dayTable({ breaches, cautions, notes, steps, units }: DayPlan): Table {
  const clock = (min: number): string => clockText(min, units);
  return {
    kind: "table",
    title: "The batch day",
    columns: [
      { heading: "from" },
      { heading: "until" },
      { heading: "step" },
      { heading: "look from" },
      { heading: "done by" },
      { heading: "may begin later by (min)", decimals: 0 },
    ],
    rows: steps.map((step) => [
      clock(step.startMin),
      clock(step.endMin),
      stepText(step),
      step.readyMin === null ? null : clock(step.readyMin[0]),
      step.readyMin === null ? null : clock(step.readyMin[1]),
      step.slackMin,
    ]),
    notes: [...breaches, ...notes, ...cautions],
  };
}
