import { listed, rowsText } from "./slip";

/** Something in a file that was read, and that a person should know of. */
export interface Notice {
  /** as errors name it: `"trials/week.csv"` */
  readonly file: string;
  /** row of a file, as an editor counts it; `null` when it is of the whole file */
  readonly row: number | null;
  /** where in the row: `"column setpoint_f"`; `null` when it is of the whole row */
  readonly at: string | null;
  /** `"read"`: typed in one of several ways, and taken as it says; `"doubt"`: taken as typed, and unlikely; `"aside"`: no record */
  readonly kind: "read" | "doubt" | "aside";
  /** what stands there, and what it was taken as; `null` where that says nothing */
  readonly given: string | null;
  readonly taken: string | null;
  /** `"minutes and seconds"`; the rest of the sentence */
  readonly says: string;
}

/** How many of the things that were given one line shows. */
const SHOWN = 3;

/**
 * Notices as lines for a person, one sentence each: file, row, column, what is to be known, what was given and what it was
 * taken as. Those that are alike in several rows of a file are one line that names all rows.
 *
 * @param notices in any order
 * @returns lines, in the order in which their first ones came
 */
export function noticeLines(notices: readonly Notice[]): readonly string[] {
  const alike = new Map<string, Notice[]>();
  for (const notice of notices) {
    const key = JSON.stringify([notice.file, notice.at, notice.kind, notice.says]);
    const group = alike.get(key);
    if (group === undefined) alike.set(key, [notice]);
    else group.push(notice);
  }
  return [...alike.values()].map(lineOf);
}

/**
 * As `noticeLines`, but of cells that were only typed in another way or left out, one line: how many there are. Whoever
 * loads a kitchen is told what to doubt; `check-kitchen` tells how each cell was read.
 */
export function calmNotices(notices: readonly Notice[]): readonly string[] {
  const isCalm = ({ kind, row }: Notice): boolean => kind === "read" && row !== null;
  const calm = notices.filter(isCalm);
  const files = [...new Set(calm.map(({ file }) => file))];
  const shown = files.length > SHOWN + 1 ? [...files.slice(0, SHOWN), `${files.length - SHOWN} other files`] : files;
  const count = calm.length === 1 ? "1 cell was" : `${calm.length} cells were`;
  const summary = `${listed(shown)}: ${count} typed in another way or left out, and read as meant; check-kitchen tells how`;
  return [...noticeLines(notices.filter((notice) => !isCalm(notice))), ...(calm.length === 0 ? [] : [summary])];
}

function lineOf(group: readonly Notice[]): string {
  const { file, at, says } = group[0];
  const rows = [...new Set(group.flatMap(({ row }) => row ?? []))].sort((a, b) => a - b);
  const place = `${file}${rowsText(file, rows)}`;
  const where = at === null ? place : `${place}${rows.length > 0 ? "," : ""} ${at}`;
  const shown = [...new Set(group.flatMap((notice) => pairOf(notice) ?? []))];
  const more = shown.length - SHOWN;
  const given = more > 1 ? [...shown.slice(0, SHOWN), `${more} others`] : shown;
  return `${where}: ${says}${given.length === 0 ? "" : ` (${listed(given)})`}`;
}

function pairOf({ given, taken }: Notice): string | null {
  if (given === null) return taken;
  return taken === null ? given : `${given} as ${taken}`;
}
