import type { Trial } from "./trial";

/**
 * The trials without those that hold the same as an earlier one under another name: a row that was copied, or a cell that
 * logged a trial twice. Such a row stays in the log and is named in a notice; as evidence it counts once.
 *
 * @param trials of one kitchen, in the log's order
 */
export function distinctTrials<T extends Trial>(trials: readonly T[]): readonly T[] {
  const seen = new Set<string>();
  return trials.filter((trial) => {
    const measured = measuredOf(trial);
    if (seen.has(measured)) return false;
    seen.add(measured);
    return true;
  });
}

/** All that a trial holds but its name and its remarks. */
export function measuredOf(trial: Trial): string {
  const { trialId: _, note: __, card: ___, photos: ____, extra: _____, ...measured } = trial;
  return Object.entries(measured)
    .filter(([, value]) => value !== undefined)
    .map(([, value]) => JSON.stringify(value))
    .join("|");
}
