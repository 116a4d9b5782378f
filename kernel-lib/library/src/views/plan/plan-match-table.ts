import type { PlanMatch } from "../../advice/run-sheet/match-plan";
import type { Table } from "../table/table";

/** What came of a plan, a row a planned trial. */
export function planMatchTable({ plan, rows, unplanned, sentence }: PlanMatch): Table {
  return {
    kind: "table",
    title: `What came of plan ${plan.name}`,
    columns: [
      { heading: "turn", decimals: 0 },
      { heading: "morning", decimals: 0 },
      { heading: "planned as" },
      { heading: "logged as" },
      { heading: "run otherwise" },
    ],
    rows: rows.map(({ planned, trial, deviations }) => [
      planned.run,
      planned.session,
      planned.trialId,
      trial === null ? null : trial.trialId,
      trial === null ? null : deviations.length === 0 ? "no" : deviations.join("; "),
    ]),
    notes: [sentence, ...(unplanned.length === 0 ? [] : [`Not of the plan: ${unplanned.join(", ")}.`])],
  };
}
