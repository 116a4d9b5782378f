import type { Notice } from "../../check/notice";
import type { FileOf, KnownNames } from "../known-names";
import type { Trial } from "../trial";
import { shownCell } from "./cell/fill-draft";
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
  const noticesOf = new Map<number, readonly Notice[]>();
  const changeOf = new Map<number, Partial<Trial>>();
  for (const { row, fields, cells, faulty } of log.drafts)
    for (const field of ["variantId", "panId", "applianceId"] as const) {
      const typed = fields[field];
      const known = names[field];
      if (typeof typed !== "string" || faulty.has(field) || known === null || known.has(typed)) continue;
      const meant = known.sameAs(typed);
      if (meant === null) continue;
      const heading = log.headings[field];
      const given = shownCell(cells[heading] ?? typed);
      const says = `was taken as the id in ${known.file} that differs in capitals or blanks alone`;
      const notice: Notice = { file: log.file, row, at: `column ${heading}`, kind: "read", given, taken: meant, says };
      noticesOf.set(row, [...(noticesOf.get(row) ?? []), notice]);
      changeOf.set(row, { ...changeOf.get(row), [field]: meant });
    }
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
