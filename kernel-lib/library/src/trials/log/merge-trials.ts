import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { ownValue } from "../../check/own-value";
import type { Trial } from "../trial";

/** What becomes of a conflict. */
export type MergeChoice = "ours" | "theirs" | "both";

/** Two logs, and what was decided about their conflicts so far. */
export interface MergeTrialsOptions {
  readonly ours: readonly Trial[];
  readonly theirs: readonly Trial[];
  /** by the id of the conflict's trial in their log; a conflict that is not decided keeps ours;
   * "both" gives their trial the next free id: T-07 becomes T-07-2 */
  readonly choose?: Readonly<Record<string, MergeChoice>>;
}

/** Two rows that may be one trial. */
export interface MergeConflict {
  /**
   * "differs": one id, and fields that contradict each other. "fills in": one id, and theirs knows what ours does not or the
   * other way round, and nothing contradicts; the merged trial holds both. "typed twice": two ids, the same measurements,
   * at most a day apart.
   */
  readonly kind: "differs" | "fills in" | "typed twice";
  readonly ours: Trial;
  readonly theirs: Trial;
  /** fields that differ */
  readonly fields: readonly (keyof Trial)[];
  /** what was done: as chosen, else "ours", and "both" where one fills in the other */
  readonly chosen: MergeChoice;
  readonly sentence: string;
}

/** Two logs made one. */
export interface MergedTrials {
  /** ours in their order, then what only theirs holds */
  readonly trials: readonly Trial[];
  readonly conflicts: readonly MergeConflict[];
  /** ids that only one log holds, and those that both hold alike */
  readonly onlyOurs: readonly string[];
  readonly onlyTheirs: readonly string[];
  readonly alike: readonly string[];
}

/** Who typed it, and when, says nothing about whether it is the same trial. */
const NOT_MEASURED: ReadonlySet<keyof Trial> = new Set([
  "trialId",
  "date",
  "session",
  "cook",
  "note",
  "card",
  "photos",
  "extra",
]);
/** A trial is recognised by this many measured fields at least: our judgement. */
const FEWEST_MEASURED = 5;
const DAY_MS = 86_400_000;

/**
 * Makes two logs one, and loses nothing: every trial of either is in the merged log as it was, or stands in a conflict
 * with both versions. Days may be one apart, as clocks of two kitchens are.
 *
 * @throws when a log holds an id twice, or a choice names no conflict
 */
export function mergeTrials({ ours, theirs, choose = {} }: MergeTrialsOptions): MergedTrials {
  const oursById = byId(ours, "ours");
  const theirsById = byId(theirs, "theirs");
  const measured = new Map(ours.map((trial) => [keyOf(trial), trial]));
  const merged = new Map(oursById);
  const added: Trial[] = [];
  const conflicts: MergeConflict[] = [];
  const alike: string[] = [];
  const onlyTheirs: string[] = [];
  const choiceFor = (trialId: string): MergeChoice | undefined => ownValue(choose, trialId);
  const beside = (trial: Trial): void => {
    let number = 2;
    while (oursById.has(`${trial.trialId}-${number}`) || theirsById.has(`${trial.trialId}-${number}`)) number++;
    added.push({ ...trial, trialId: `${trial.trialId}-${number}` });
  };
  for (const theirTrial of theirs) {
    const { trialId } = theirTrial;
    const same = oursById.get(trialId);
    if (same === undefined) {
      const twin = measured.get(keyOf(theirTrial));
      if (twin !== undefined && isKnownBy(theirTrial) && isWithinADay(twin, theirTrial)) {
        const chosen = choiceFor(trialId) ?? "ours";
        conflicts.push(conflict("typed twice", twin, theirTrial, chosen));
        if (chosen === "theirs") merged.set(twin.trialId, theirTrial);
        else if (chosen === "both") added.push(theirTrial);
      } else {
        onlyTheirs.push(trialId);
        added.push(theirTrial);
      }
      continue;
    }
    const fields = differing(same, theirTrial);
    if (fields.length === 0) alike.push(trialId);
    else if (
      choiceFor(trialId) === undefined &&
      fields.every((field) => isBlank(same[field]) || isBlank(theirTrial[field]))
    ) {
      conflicts.push(conflict("fills in", same, theirTrial, "both"));
      merged.set(trialId, {
        ...same,
        ...Object.fromEntries(
          fields.filter((field) => isBlank(same[field])).map((field) => [field, theirTrial[field]]),
        ),
      });
    } else {
      const chosen = choiceFor(trialId) ?? "ours";
      conflicts.push(conflict("differs", same, theirTrial, chosen));
      if (chosen === "theirs") merged.set(trialId, theirTrial);
      else if (chosen === "both") beside(theirTrial);
    }
  }
  const undecided = Object.keys(choose).filter((id) => !conflicts.some(({ theirs: trial }) => trial.trialId === id));
  if (undecided.length > 0)
    fail("mergeTrials: choose", "must name trials of theirs that conflict", undecided.join(", "));
  return freezeDeep({
    trials: [...merged.values(), ...added],
    conflicts,
    onlyOurs: ours
      .map(({ trialId }) => trialId)
      .filter((id) => !theirsById.has(id) && !conflicts.some((one) => one.ours.trialId === id)),
    onlyTheirs,
    alike,
  });
}

function byId(trials: readonly Trial[], whose: string): ReadonlyMap<string, Trial> {
  const found = new Map<string, Trial>();
  for (const trial of trials) {
    if (found.has(trial.trialId)) fail(`mergeTrials: ${whose}`, "must hold each id once", trial.trialId);
    found.set(trial.trialId, trial);
  }
  return found;
}

function conflict(kind: MergeConflict["kind"], ours: Trial, theirs: Trial, chosen: MergeChoice): MergeConflict {
  const fields = differing(ours, theirs);
  const what = fields.map((field) => `${field} ${shown(ours[field])} and ${shown(theirs[field])}`).join("; ");
  const sentence =
    kind === "typed twice"
      ? `${ours.trialId} and ${theirs.trialId} hold the same measurements: one trial typed twice? Kept: ${chosen}.`
      : `${ours.trialId}: ours and theirs have ${what}. Kept: ${chosen}.`;
  return { kind, ours, theirs, fields, chosen, sentence };
}

function differing(a: Trial, b: Trial): (keyof Trial)[] {
  return (Object.keys(a) as (keyof Trial)[]).filter((field) => text(a[field]) !== text(b[field]));
}

function keyOf(trial: Trial): string {
  return text(
    Object.entries(trial)
      .filter(([field]) => !NOT_MEASURED.has(field as keyof Trial))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

function isKnownBy(trial: Trial): boolean {
  const numbers = Object.entries(trial).filter(
    ([field, value]) =>
      !NOT_MEASURED.has(field as keyof Trial) && !isBlank(value) && (typeof value === "number" || Array.isArray(value)),
  );
  return numbers.length >= FEWEST_MEASURED;
}

function isWithinADay(a: Trial, b: Trial): boolean {
  return Math.abs(Date.parse(a.date) - Date.parse(b.date)) <= DAY_MS;
}

function isBlank(value: unknown): boolean {
  return value === null || (typeof value === "object" && Object.keys(value as object).length === 0);
}

function shown(value: unknown): string {
  return isBlank(value) ? "nothing" : text(value);
}

function text(value: unknown): string {
  return JSON.stringify(value);
}
