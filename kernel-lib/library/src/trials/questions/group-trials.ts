import { fail, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import type { KitchenTrial } from "../kitchen";
import { sessionOf } from "./session-of";
import { thicknessBand } from "./thickness-band";
import { TRIAL_QUANTITIES, type TrialQuantityName } from "./trial-quantity";

/** What trials are put together by. */
export type TrialGroupKey = "variant" | "pan" | "appliance" | "session" | "cook" | "setpoint" | "thickness band";

/** How `groupTrials` puts trials together, and what it asks them for. */
export interface GroupTrialsOptions {
  readonly by: readonly TrialGroupKey[];
  readonly of: TrialQuantityName;
  /** width of a thickness band (mm); 2 unless given */
  readonly bandMm?: number;
}

/** Trials that have something in common, and a number of theirs. */
export interface TrialGroup {
  /** what they have in common, in the order asked for */
  readonly key: readonly string[];
  /** trials that tell the number */
  readonly n: number;
  readonly mean: number;
  /** standard deviation between trials; null of one */
  readonly sd: number | null;
  /** of the mean, from Student's t; null of one trial */
  readonly confidence95: readonly [number, number] | null;
  readonly trialIds: readonly string[];
  /** trials of the group that do not tell the number */
  readonly silent: readonly string[];
}

/**
 * A number of the trials, by what they have in common: how many, mean, standard deviation and the 95 % interval of the
 * mean, mean ± t₀.₉₇₅(n−1)·sd/√n. Trials count as independent: those of one morning or one slab are more alike, so that
 * the interval is then too narrow, and the morning is worth grouping by.
 *
 * @returns groups in the order of their first trial; a group whose trials are all silent is left out
 * @example
 * groupTrials(loadKitchen().trials, { by: ["variant"], of: "lossPercent" })[0].n; // → 32
 */
export function groupTrials(trials: readonly KitchenTrial[], options: GroupTrialsOptions): readonly TrialGroup[] {
  const { by, of, bandMm = 2 } = options;
  if (by.length === 0) fail("groupTrials: by", "must name what trials are grouped by", by);
  positive(bandMm, "groupTrials: bandMm", "mm");
  const quantity =
    TRIAL_QUANTITIES[of] ?? fail("groupTrials: of", `must be one of ${Object.keys(TRIAL_QUANTITIES).join(", ")}`, of);
  const groups = new Map<string, { key: readonly string[]; trials: KitchenTrial[] }>();
  for (const trial of trials) {
    const key = by.map(
      (what) =>
        KEYS[what]?.(trial, bandMm) ?? fail("groupTrials: by", `must be one of ${Object.keys(KEYS).join(", ")}`, what),
    );
    const name = JSON.stringify(key);
    const group = groups.get(name);
    if (group) group.trials.push(trial);
    else groups.set(name, { key, trials: [trial] });
  }
  const found = [...groups.values()].map(({ key, trials: members }) => summary(key, members, quantity.of));
  return freezeDeep(found.filter(({ n }) => n > 0));
}

const KEYS: Readonly<Record<TrialGroupKey, (trial: KitchenTrial, bandMm: number) => string>> = {
  variant: (trial) => trial.variantId,
  pan: (trial) => trial.panId,
  appliance: (trial) => trial.applianceId,
  session: sessionOf,
  cook: (trial) => trial.cook ?? "not told",
  setpoint: (trial) => String(Math.round(trial.setpointC)),
  "thickness band": ({ thicknessMm }, bandMm) => {
    const [from, to] = thicknessBand(thicknessMm, bandMm);
    return `${from} to ${to} mm`;
  },
};

function summary(
  key: readonly string[],
  trials: readonly KitchenTrial[],
  of: (trial: KitchenTrial) => number | null,
): TrialGroup {
  const told = trials.filter((trial) => of(trial) !== null);
  const values = told.map((trial) => of(trial) as number);
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const sd = n < 2 ? null : Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  const half = sd === null ? null : (studentTQuantile(0.975, n - 1) * sd) / Math.sqrt(n);
  return {
    key,
    n,
    mean,
    sd,
    confidence95: half === null ? null : [mean - half, mean + half],
    trialIds: told.map(({ trialId }) => trialId),
    silent: trials.filter((trial) => of(trial) === null).map(({ trialId }) => trialId),
  };
}
