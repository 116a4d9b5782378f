/** One thing in a kitchen's file that cannot stay as it is. */
export interface Slip {
  /** as errors name it: `"trials/week.csv"` */
  readonly file: string;
  /** row of a CSV file or line of a JSON file, as an editor counts them; `null` when it is of the whole file */
  readonly row: number | null;
  /** where in the row: `"column setpoint_f"`, `"mix.2.amount"`; `null` when it is of the whole row */
  readonly at: string | null;
  /** `"a number in °F with a decimal point"` */
  readonly expected: string;
  /** what stands there, a cell as JSON; `null` when `expected` says it all */
  readonly got: string | null;
  /** the known name that is nearest to what was given, where that helps */
  readonly nearest: string | null;
  /** what may be done about it, the end of the sentence */
  readonly hint?: string;
  /** whether it is one slip wherever it is made, in other files too, such as a name that no file has */
  readonly anywhere?: boolean;
}

/** How many of the things that were given one line shows. */
const SHOWN = 3;

/**
 * Slips as lines for a person, one sentence each: file, row, column, what was expected, what was given, the nearest known
 * name. Slips that are made alike in several rows, such as °F under a °C heading, are one line that names all rows.
 *
 * @param slips in any order
 * @param order files in the order of the lines; others follow as they appear
 * @returns lines, within a file from top to bottom
 */
export function slipLines(slips: readonly Slip[], order: readonly string[] = []): readonly string[] {
  const files = new Map(order.map((file, at) => [file, at]));
  for (const { file } of slips) if (!files.has(file)) files.set(file, files.size);
  const inOrder = slips.toSorted(
    (a, b) => (files.get(a.file) ?? 0) - (files.get(b.file) ?? 0) || (a.row ?? 0) - (b.row ?? 0),
  );
  const alike = new Map<string, Slip[]>();
  let last: Slip[] = [];
  for (const slip of inOrder) {
    const { file, at, expected, got, nearest, anywhere, hint } = slip;
    // in a file of many thousand slips most are like the one before
    if (isLike(last[0], slip)) {
      last.push(slip);
      continue;
    }
    // of a whole row it matters which has what
    const key = [anywhere ? null : file, anywhere || at === null ? got : null, at, expected, nearest, hint].join("\0");
    last = alike.get(key) ?? [];
    if (last.length === 0) alike.set(key, last);
    last.push(slip);
  }
  return [...alike.values()].map(lineOf);
}

function isLike(one: Slip | undefined, other: Slip): boolean {
  return (
    one !== undefined &&
    one.file === other.file &&
    one.at === other.at &&
    one.got === other.got &&
    one.expected === other.expected &&
    one.nearest === other.nearest &&
    one.hint === other.hint &&
    one.anywhere === other.anywhere
  );
}

function lineOf(group: readonly Slip[]): string {
  const { at, expected, nearest, hint } = group[0];
  const rowsOf = new Map<string, Set<number>>();
  const given = new Set<string>();
  for (const { file, row, got } of group) {
    const rows = rowsOf.get(file) ?? new Set();
    if (row !== null) rows.add(row);
    if (rows.size < 2) rowsOf.set(file, rows);
    if (got !== null) given.add(got);
  }
  const places = listed([...rowsOf].map(([file, rows]) => `${file}${rowsText(file, [...rows])}`));
  const isInRow = group[0].row !== null;
  const where = at === null ? places : `${places}${isInRow ? "," : ""} ${at}`;
  const more = given.size - SHOWN;
  const shown = more > 1 ? listed([...[...given].slice(0, SHOWN), `${more} others`]) : listed([...given]);
  return `${where}: expected ${expected}${shown && `, got ${shown}`}${nearest === null ? "" : ` (nearest: ${nearest})`}${hint === undefined ? "" : `; ${hint}`}`;
}

/** `" row 3"`, `" rows 3 to 16 and 18"`; lines for a JSON file. */
export function rowsText(file: string, rows: readonly number[]): string {
  if (rows.length === 0) return "";
  const word = /\.jsonl?$/i.test(file) ? "line" : "row";
  const runs: number[][] = [];
  for (const row of rows) {
    const run = runs.at(-1);
    if (run?.at(-1) === row - 1) run.push(row);
    else runs.push([row]);
  }
  const parts = runs.flatMap((run) => (run.length > 2 ? [`${run[0]} to ${run.at(-1)}`] : run.map(String)));
  const most = 10;
  const few = parts.length > most + 1 ? [...parts.slice(0, most), `${parts.length - most} more`] : parts;
  return ` ${word}${rows.length > 1 ? "s" : ""} ${listed(few)}`;
}

/** `"a"`, `"a and b"`, `"a, b and c"`. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
