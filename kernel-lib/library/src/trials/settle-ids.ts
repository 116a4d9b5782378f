import { clipped } from "../check/check";
import type { Notice } from "../check/notice";
import type { FileOf, KnownNames } from "./known-names";

/** Ids of a file that were typed in another way than a kitchen's own. */
export interface SettledIds<T> {
  /** what each row should hold instead */
  readonly changeOf: ReadonlyMap<number, Partial<T>>;
  readonly noticesOf: ReadonlyMap<number, readonly Notice[]>;
}

/** The ids of a file that are known ones in another form (`KnownNames.sameAs`), each with a notice. */
export function settledIds<T>(
  { file, drafts, headings }: FileOf<T>,
  names: { readonly [Field in keyof T & string]?: KnownNames | null },
): SettledIds<T> {
  const noticesOf = new Map<number, readonly Notice[]>();
  const changeOf = new Map<number, Partial<T>>();
  for (const { row, fields, cells, faulty } of drafts)
    for (const [field, known] of Object.entries(names) as [keyof T & string, KnownNames | null][]) {
      const typed: unknown = fields[field];
      if (typeof typed !== "string" || faulty.has(field) || known === null || known.has(typed)) continue;
      const meant = known.sameAs(typed);
      if (meant === null) continue;
      const heading = headings[field];
      const given = clipped(JSON.stringify(cells[heading] ?? typed));
      const says = `was taken as ${known.likeness}`;
      const notice: Notice = { file, row, at: `column ${heading}`, kind: "read", given, taken: meant, says };
      noticesOf.set(row, [...(noticesOf.get(row) ?? []), notice]);
      changeOf.set(row, { ...changeOf.get(row), [field]: meant } as Partial<T>);
    }
  return { changeOf, noticesOf };
}

/** A file with its ids as a kitchen writes them: `Half sheet` is `half-sheet`. Others are left for `unknownNames` to tell. */
export function settleIds<T>(
  read: FileOf<T>,
  names: { readonly [Field in keyof T & string]?: KnownNames | null },
): FileOf<T> {
  const { changeOf, noticesOf } = settledIds(read, names);
  if (changeOf.size === 0) return read;
  return {
    ...read,
    records: read.records.map((record, at) => Object.freeze({ ...record, ...changeOf.get(read.rows[at]) })),
    drafts: read.drafts.map((draft) => ({ ...draft, fields: { ...draft.fields, ...changeOf.get(draft.row) } })),
    notices: [...read.notices, ...[...noticesOf.values()].flat()],
  };
}
