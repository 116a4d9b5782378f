import type { KitchenTrial } from "../kitchen";
import { sessionOf } from "./session-of";

/** One reading of one trial: the log in its long form. */
export interface ReadingRow {
  readonly trialId: string;
  readonly variantId: string;
  readonly session: string;
  readonly what: "depth" | "look" | "core" | "crispness" | "browning" | "mass before" | "mass after";
  readonly unit: "mm" | "min" | "°C" | "of 9" | "g";
  /** first, second, ... of its kind in the trial */
  readonly number: number;
  readonly value: number;
  /** who gave a score, where the log says */
  readonly taster: string | null;
}

/** Every reading of the trials, a row each, in the log's order; what was not measured has no row. */
export function readingRows(trials: readonly KitchenTrial[]): readonly ReadingRow[] {
  return trials.flatMap((trial) => {
    const rows = (
      what: ReadingRow["what"],
      unit: ReadingRow["unit"],
      values: readonly (number | null)[],
      tasters: readonly string[] = [],
    ): ReadingRow[] =>
      values.flatMap((value, at) =>
        value === null
          ? []
          : [
              {
                trialId: trial.trialId,
                variantId: trial.variantId,
                session: sessionOf(trial),
                what,
                unit,
                number: at + 1,
                value,
                taster: tasters[at] ?? null,
              },
            ],
      );
    return [
      ...rows("depth", "mm", trial.probesMm),
      ...rows("look", "min", trial.looksMin),
      ...rows("core", "°C", trial.coresC.length > 0 ? trial.coresC : [trial.coreC]),
      ...rows("mass before", "g", [trial.massBeforeG]),
      ...rows("mass after", "g", [trial.massAfterG]),
      ...rows("crispness", "of 9", trial.crispScores, trial.crispTasters),
      ...rows("browning", "of 9", trial.brownScores, trial.brownTasters),
    ];
  });
}
