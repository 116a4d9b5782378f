import { clipped } from "../../../check/check";
import type { Notice } from "../../../check/notice";
import type { DecimalSign } from "../../../units/typed/decimal-sign";
import { expectedNumber, type NumberRules, readNumber } from "../../../units/typed/read-number";
import { isUnknown } from "../../../units/typed/unknown-mark";
import type { Trial } from "../../trial";
import type { LogField } from "../log-fields";
import type { LogColumn } from "../table/lay-out";
import { isLiveFormula, unguarded } from "./formula-guard";
import { partsOf } from "./parts-of";
import { type DayOrder, readDay } from "./read-day";
import { readProgramme } from "./read-programme";
import { readScores } from "./read-scores";

/** By what the cells of a file are read. */
export interface CellRules {
  readonly sign: DecimalSign | null;
  readonly order: DayOrder;
  /** whether texts that look like formulas are guarded in this format (`guarded`) */
  readonly guards: boolean;
}

/** A trial that is being read: what stands in no cell is as in `EMPTY_TRIAL`. */
export type Draft = { -readonly [Field in keyof Trial]: Trial[Field] | null };

/** What is to be said of a cell: what was expected, or how it was read. */
export interface CellSays {
  readonly column: LogColumn;
  readonly says: string;
  readonly taken: string | null;
  /** `"read"` unless given */
  readonly kind?: Notice["kind"];
}

/** What needs no second look where the decimal sign is a point. */
const PLAIN = /^-?\d{1,9}(?:\.\d{1,9})?$/;

const NONE: readonly never[] = Object.freeze([]);
const NO_EXTRA: Readonly<Record<string, string>> = Object.freeze({});

/** A trial of which nothing is known. */
export const EMPTY_TRIAL: Readonly<Draft> = Object.freeze({
  trialId: null,
  date: null,
  variantId: null,
  panId: null,
  applianceId: null,
  batchG: null,
  probesMm: NONE,
  setpointC: null,
  loadFraction: null,
  startC: null,
  flipMin: null,
  timeMin: null,
  notCrispMin: null,
  crispMin: null,
  coreC: null,
  restedCoreC: null,
  restMin: null,
  massBeforeG: null,
  massAfterG: null,
  pieces: null,
  crispScores: NONE,
  brownScores: NONE,
  slab: null,
  session: null,
  cook: null,
  pieceLengthMm: null,
  pieceWidthMm: null,
  looksMin: NONE,
  card: null,
  note: null,
  coresC: NONE,
  crispTasters: NONE,
  brownTasters: NONE,
  preheated: null,
  place: null,
  programme: NONE,
  oilG: null,
  barePieceG: null,
  coatedPieceG: null,
  ageDays: null,
  frost: null,
  photos: NONE,
  extra: NO_EXTRA,
});

const NOT_KNOWN = "says that it is not known, and was kept so";
const YES: ReadonlySet<string> = new Set(["yes", "y", "true", "1", "x", "✓", "ja"]);
const NO: ReadonlySet<string> = new Set(["no", "n", "false", "0", "nein"]);
const NEVER: ReadonlySet<string> = new Set(["no", "never", "not", "not turned", "not flipped"]);

/** A column with the rules by which its numbers are read. */
export interface ColumnReader {
  readonly column: LogColumn;
  readonly numbers: NumberRules;
}

/** What reads the cells of a column. */
export function columnReader(column: LogColumn, sign: DecimalSign | null): ColumnReader {
  const { kind = null, base = null, holds } = column.field ?? {};
  const words = holds === "count" ? ["pc", "pcs", "pcs.", "piece", "pieces"] : undefined;
  return Object.freeze({ column, numbers: Object.freeze({ sign, kind, base, unit: column.unit, words }) });
}

/** Takes cells into a draft one after the other; `wrong` and `told` are handed what is to be said of them. */
export interface FillOptions {
  draft: Draft;
  /** places of tasters that gave no score, by column */
  readonly gaps: Map<string, readonly number[]>;
  readonly rules: CellRules;
  readonly wrong: (column: LogColumn, expected: string) => undefined;
  readonly told: (says: CellSays) => undefined;
}

/** Reads one cell that is not blank into a draft. */
export function fillDraft(reader: ColumnReader, raw: string, options: FillOptions): void {
  const { draft } = options;
  const { column, numbers } = reader;
  const { field, heading } = column;
  if (field === null) {
    if (draft.extra === NO_EXTRA) draft.extra = Object.create(null) as Record<string, string>;
    (draft.extra as Record<string, string>)[heading] = textIn(column, raw, options);
    return;
  }
  const cell = raw.trim();
  const isQuick = !field.many && field.kind !== null && numbers.unit === numbers.base && numbers.sign === ".";
  const value = isQuick && PLAIN.test(cell) ? Number(cell) : valueIn(reader, raw, cell, options);
  if (value !== undefined) (draft as Record<string, unknown>)[field.name] = value;
}

/** What a cell holds; undefined where it holds nothing that can be taken, which has then been said. */
function valueIn(reader: ColumnReader, raw: string, cell: string, options: FillOptions): unknown {
  const { column } = reader;
  const { rules, wrong, told } = options;
  const { name, holds, many } = column.field as LogField;
  if (name === "note") return textIn(column, raw, options);
  if (holds === "id" || name === "trialId") return cell;
  if (holds === "day") {
    const read = readDay(cell, rules.order);
    return "expected" in read ? wrong(column, read.expected) : tell(column, read.says, read.day, options, read.day);
  }
  if (holds === "yesNo" && (YES.has(cell.toLowerCase()) || NO.has(cell.toLowerCase())))
    return YES.has(cell.toLowerCase());
  if (isUnknown(cell)) return told({ column, says: NOT_KNOWN, taken: null });
  if (holds === "yesNo") return wrong(column, "yes or no");
  if (holds === "text") return textIn(column, cell, options);
  if (holds === "files") return listed(cell, /[;\n\r]/);
  if (holds === "programme") {
    const read = readProgramme(cell, reader.numbers);
    return "expected" in read ? wrong(column, read.expected) : read.steps;
  }
  if (holds === "scores") return scoresOf(column, cell, options);
  if (holds === "tasters") return fillTasters(column, cell, options);
  if (holds === "share") return shareOf(reader, cell, options);
  if ((name === "flipMin" || name === "crispMin") && NEVER.has(cell.toLowerCase()))
    return told({ column, says: "says that it never was, and was kept so", taken: null });
  if (many) return readingsOf(reader, cell, options);
  const read = readNumber(cell, reader.numbers);
  return "expected" in read ? wrong(column, read.expected) : tell(column, read.says, read.taken, options, read.value);
}

/** A text without its guard; one that stands there as a formula is named. */
function textIn(column: LogColumn, cell: string, { rules, told }: FillOptions): string {
  if (!rules.guards) return cell;
  if (isLiveFormula(cell))
    told({ column, says: "would run as a formula in a spreadsheet; kept as text", taken: null, kind: "doubt" });
  return unguarded(cell);
}

/** Says how a cell was read, where there is something to say, and hands on what was read. */
function tell<T>(column: LogColumn, says: string | null, taken: string | null, { told }: FillOptions, value: T): T {
  if (says !== null) told({ column, says, taken });
  return value;
}

function listed(cell: string, parting: RegExp): readonly string[] {
  return cell
    .split(parting)
    .map((part) => part.trim())
    .filter((part) => part !== "");
}

function scoresOf(column: LogColumn, cell: string, { draft, rules, gaps, wrong, told }: FillOptions): unknown {
  const name = column.field?.name as string;
  const read = readScores(cell, rules.sign);
  if ("expected" in read) return wrong(column, read.expected);
  for (const at of read.without) told({ column, says: `taster ${at + 1} gave no score`, taken: null });
  if (read.without.length > 0) gaps.set(name, read.without);
  if (name === "crispScores") draft.crispTasters = read.tasters;
  else draft.brownTasters = read.tasters;
  return read.scores;
}

/** Gives both panels their initials; comes after their scores. */
function fillTasters(column: LogColumn, cell: string, { draft, gaps, wrong }: FillOptions): unknown {
  const names = listed(cell, /[;,/\n\r]/);
  const tasters = names.length === 1 && /^\S{1,4}(?: +\S{1,4})+$/.test(names[0]) ? names[0].split(/ +/) : names;
  for (const [panel, scored] of [
    ["crispTasters", "crispScores"],
    ["brownTasters", "brownScores"],
  ] as const) {
    const scores = draft[scored] as readonly number[];
    if (scores.length === 0 || (draft[panel] as readonly string[]).length > 0) continue;
    const without = gaps.get(scored) ?? [];
    if (tasters.length !== scores.length + without.length)
      return wrong(column, `the initials of as many tasters as gave scores (${scores.length + without.length})`);
    draft[panel] = tasters.filter((_, at) => !without.includes(at));
  }
  return undefined;
}

function shareOf({ column, numbers }: ColumnReader, cell: string, options: FillOptions): unknown {
  const isPercent = cell.endsWith("%");
  const read = readNumber(isPercent ? cell.slice(0, -1).trim() : cell, numbers);
  if ("expected" in read) return options.wrong(column, read.expected);
  const value = isPercent || column.unit === "%" ? read.value / 100 : read.value;
  const says = isPercent && column.unit !== "%" ? "was taken as a share of one" : read.says;
  return tell(column, says, String(value), options, value);
}

function readingsOf({ column, numbers }: ColumnReader, cell: string, options: FillOptions): unknown {
  const { draft, rules, wrong, told } = options;
  const isInch = column.unit === "in" || (column.unit === null && /["”″]|in/.test(cell));
  const parts = partsOf(cell, { hasFractions: isInch, sign: rules.sign });
  const expected = `${expectedNumber(numbers).replace(/^a number/, "numbers")}, parted by semicolons`;
  if (parts.length === 0) return wrong(column, expected);
  const values: number[] = [];
  const isNamed = (part: string): boolean => /[a-z°"”″]/i.test(part);
  for (const [at, part] of parts.entries()) {
    if (isUnknown(part)) {
      told({ column, says: "has a reading that is not known, which was left out", taken: null });
      continue;
    }
    const read = readNumber(part, numbers);
    if ("expected" in read) return wrong(column, read.expected.startsWith("a number in") ? expected : read.expected);
    // of "8; 9; 0.3 in" nobody knows whether 8 and 9 are inches too
    const isAlone = at === parts.length - 1 && parts.length > 1 && isNamed(part) && !isNamed(parts[0]);
    if (isAlone && read.says !== null) return wrong(column, `${expected}, each with its unit or none`);
    values.push(tell(column, read.says, read.taken, options, read.value));
  }
  if (column.field?.name !== "coresC") return values;
  draft.coreC = values.length === 0 ? null : values.reduce((least, one) => Math.min(least, one));
  if (values.length < 2) return undefined;
  told({
    column,
    says: "has several readings; the coldest counts",
    taken: `${Number(draft.coreC?.toPrecision(6))} °C`,
  });
  return values;
}

/** What a cell holds, for a sentence. */
export function shownCell(raw: string): string {
  return clipped(JSON.stringify(raw));
}
