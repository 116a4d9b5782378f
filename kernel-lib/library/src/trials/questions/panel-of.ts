import { freezeDeep } from "../../check/freeze-deep";
import { tooLittle } from "../../check/too-little";
import { type IntraclassCorrelation, intraclassCorrelation } from "../../statistics/agreement/intraclass-correlation";
import { type JudgeLevels, judgeLevels, judgesAreJoined, type Score } from "../../statistics/agreement/judge-levels";
import { type Concordance, kendallW } from "../../statistics/agreement/kendall-w";
import type { KitchenTrial } from "../kitchen";

/** What tasters' scores say when their habits are taken off, and how far the tasters agree. */
export interface Panel {
  readonly of: "crispness" | "browning";
  /** whether the log names who gave which score; else the place in the list stands for the taster */
  readonly named: boolean;
  readonly tasters: readonly string[];
  /** scores without a taster's habit, and those habits */
  readonly levels: JudgeLevels;
  /** trials that every taster scored; agreement rests on these */
  readonly complete: number;
  /** same order of the trials? null with fewer than three such trials */
  readonly order: Concordance | null;
  /** same numbers? null with fewer than three such trials, or scores without scatter */
  readonly numbers: IntraclassCorrelation | null;
}

/** Below this many trials scored by all, agreement says nothing: our judgement. */
const FEWEST = 3;

/**
 * The panel behind the scores of some trials: each trial's score with tasters' habits taken off (`judgeLevels`), each
 * taster's habit, and their agreement (`kendallW`, `intraclassCorrelation`) over the trials that all of them scored. Scores
 * stand as `AB:7; CD:6.5` in the log to be somebody's; scores without names count by their place, as they were called out.
 *
 * @throws too little, in words, when there are fewer than two tasters or no trial that joins them
 */
export function panelOf(trials: readonly KitchenTrial[], of: "crispness" | "browning" = "crispness"): Panel {
  const told = trials.map((trial) =>
    of === "crispness"
      ? { thing: trial.trialId, scores: trial.crispScores, tasters: trial.crispTasters }
      : { thing: trial.trialId, scores: trial.brownScores, tasters: trial.brownTasters },
  );
  const named = told.some(({ tasters }) => tasters.length > 0);
  const scores: Score[] = told
    .filter(({ tasters }) => !named || tasters.length > 0)
    .flatMap(({ thing, scores: given, tasters }) =>
      given.map((score, at) => ({ thing, judge: named ? tasters[at] : `taster ${at + 1}`, score })),
    );
  const tasters = [...new Set(scores.map(({ judge }) => judge))].sort();
  if (tasters.length < 2)
    tooLittle("panelOf", `How far tasters agree on ${of} shows once two of them have scored the same trials.`);
  if (!judgesAreJoined(scores))
    tooLittle("panelOf", `Tasters' habits show once tasters of ${of} have scored trials together; these never did.`);
  const byThing = new Map<string, Map<string, number>>();
  for (const { thing, judge, score } of scores) byThing.set(thing, (byThing.get(thing) ?? new Map()).set(judge, score));
  const table = [...byThing.values()]
    .filter((row) => row.size === tasters.length)
    .map((row) => tasters.map((taster) => row.get(taster) as number));
  const enough = table.length >= FEWEST;
  return freezeDeep({
    of,
    named,
    tasters,
    levels: judgeLevels(scores),
    complete: table.length,
    order: enough ? kendallW(table) : null,
    numbers: enough && scatters(table) ? intraclassCorrelation(table) : null,
  });
}

/** Whether scores differ by more than the levels of things and judges. */
function scatters(table: readonly (readonly number[])[]): boolean {
  const [first] = table;
  return table.some((row) => row.some((score, at) => score - first[at] !== row[0] - first[0]));
}
