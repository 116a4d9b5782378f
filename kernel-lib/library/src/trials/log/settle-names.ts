import type { FileOf, KnownNames } from "../known-names";
import { settledIds } from "../settle-ids";
import type { Trial } from "../trial";
import type { LogRows, TakenRow } from "./read-trials";

/** The names that a kitchen gives to what trials speak of; `null` where they could not all be read. */
export interface TrialNames {
  readonly variantId: KnownNames | null;
  readonly panId: KnownNames | null;
  readonly applianceId: KnownNames | null;
}

/**
 * Takes ids of a log that differ from a kitchen's in nothing but capitals, blanks and hyphens as those, each with a
 * notice: `Half sheet` is `half-sheet`. Others are left for `unknownNames` to tell.
 */
export function settleNames(log: LogRows & FileOf<Trial>, names: TrialNames): LogRows & FileOf<Trial> {
  const { changeOf, noticesOf } = settledIds<Trial>(log, { ...names });
  if (changeOf.size === 0) return log;
  const changed = ({ row, trial, notices }: TakenRow): TakenRow => ({
    row,
    trial: Object.freeze({ ...trial, ...changeOf.get(row) }),
    notices: [...notices, ...(noticesOf.get(row) ?? [])],
  });
  const taken = [...log.good, ...log.kept].sort((a, b) => a.row - b.row).map(changed);
  const notices = [...log.notices, ...[...noticesOf.values()].flat()];
  return {
    ...log,
    records: taken.map(({ trial }) => trial),
    drafts: log.drafts.map((draft) => {
      const change = changeOf.get(draft.row);
      return change === undefined ? draft : { ...draft, cells: draft.cells, fields: { ...draft.fields, ...change } };
    }),
    good: taken.filter(({ notices }) => notices.length === 0),
    kept: taken.filter(({ notices }) => notices.length > 0),
    notices,
  };
}
