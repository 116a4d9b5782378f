import { headingUnit } from "../columns/heading-unit";
import { convertUnit } from "../convert-unit";
import { findUnit, isUnit } from "../find-unit";
import type { UnitKind } from "../unit-table";
import type { DecimalSign } from "./decimal-sign";
import { writtenFractions } from "./written-fractions";

/** By what a number in a cell is read. */
export interface NumberRules {
  /** the decimal sign of the file; `null` when nothing tells */
  readonly sign: DecimalSign | null;
  /** what it measures; `null` for a bare number */
  readonly kind: UnitKind | null;
  /** the unit that the number is wanted in */
  readonly base: string | null;
  /** the unit of the heading; `null` for a heading without one */
  readonly unit: string | null;
  /** words that may follow a bare number, such as pieces */
  readonly words?: readonly string[];
}

/** A number as read, or what was expected in its place. */
export type ReadNumber =
  | {
      readonly value: number;
      /** what is to be said of it: `null` when it was typed as it is taken */
      readonly says: string | null;
      readonly taken: string | null;
    }
  | { readonly expected: string };

/** The longest cell that is read as a number: our judgement. */
const LONGEST = 100;

const PLAIN = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d{1,3})?$/i;
const ABOUT = /^(?:~|≈|c(?:irc)?a\.?\s|about\s|approx\.?\s)\s*/i;
const FRACTION = /^(?:(\d{1,5})[ -])?(\d{1,4})\/(\d{1,4})(?![\d.,/])/;
const DIGITS = /^(?:\d{1,3}(?:[ '’]\d{3})+(?:[.,]\d+)?(?![\d.,'’])|(?:\d[\d.,]*|[.,]\d+)(?:e[+-]?\d{1,3})?)/i;

/**
 * Reads one number as people type it: `12.5`, `12,5` where the file's sign is a comma, `1 1/4`, `⅜`, `2 lb 10 oz`, `9.1 mm`
 * in a column of inches, `12:30` as minutes and seconds, `1,150` as thousands where that is no question, `~12`. What is
 * taken otherwise than it would be read digit by digit is said.
 */
export function readNumber(cell: string, rules: NumberRules): ReadNumber {
  const { kind, base, unit } = rules;
  if (unit !== "min:s" && rules.sign !== "," && PLAIN.test(cell) && (kind === null || unit !== null)) {
    const value = Number(cell);
    if (isThousands(cell) && rules.sign === null) return { expected: "a number whose decimal sign is no question" };
    return finished(inBase(value, unit, rules), rules, null, null);
  }
  if (cell.length > LONGEST) return { expected: expectedNumber(rules) };
  const isAbout = ABOUT.test(cell);
  const text = writtenFractions(cell.replace(ABOUT, ""))
    .replace(/[\s\u00a0\u202f\u2009]+/g, " ")
    .trim()
    .replace(/^[−–—‒] ?(?=[\d.,])/, "-")
    .replace(/^([+-]) (?=\d)/, "$1");
  const clock = kind === "time" && base === "min" ? clockOf(text, unit) : null;
  if (clock !== null) {
    if (unit === "min:s") return finished(clock.value, rules, null, null);
    return finished(clock.value, rules, clock.says, `${short(clock.value)} min`);
  }
  const sign = text[0] === "-" ? -1 : 1;
  let left = text.replace(/^[+-]/, "");
  let total = 0;
  let says: string | null = isAbout ? "about so much was taken as so much" : null;
  let named: string | null = null;
  for (let part = 0; left !== ""; part++) {
    const amount = amountAt(left, rules.sign);
    if ("expected" in amount) return { expected: amount.expected === "" ? expectedNumber(rules) : amount.expected };
    left = left.slice(amount.length).replace(/^ /, "");
    const word =
      /^[^\d]*/
        .exec(left)?.[0]
        .trim()
        .replace(/(?: and|,|\+)$/, "")
        .trim() ?? "";
    const own = word === "" ? null : unitOf(word, rules);
    if (word !== "" && own === null) {
      if (kind !== null || !(rules.words ?? []).includes(word.toLowerCase()))
        return { expected: expectedNumber(rules) };
    }
    left = left.slice(/^[^\d]*/.exec(left)?.[0].length ?? 0);
    if (amount.isThousands) says ??= "the mark was taken to part thousands";
    if (part > 0 && (own === null || named === null || kind === "temperature" || kind === null))
      return { expected: expectedNumber(rules) };
    if (part > 0 && findUnit(own as string, "readNumber").factor >= findUnit(named as string, "readNumber").factor)
      return { expected: expectedNumber(rules) };
    named = own;
    if (kind === null) total = amount.value;
    else {
      if (own === null && (unit === null || unit === "min:s")) return { expected: expectedNumber(rules) };
      if (own !== null && own !== unit && !(unit === "min:s" && own === "min"))
        says ??= unit === null ? null : `was typed in another unit than the heading's (${unit})`;
      if (part > 0 && own !== unit) says ??= null;
      total += inBase(sign * amount.value, own ?? unit, rules);
    }
  }
  const value = kind === null ? sign * total : total;
  if (text.replace(/^[+-]/, "") === "") return { expected: expectedNumber(rules) };
  return finished(value, rules, says, base === null ? short(value) : `${short(value)} ${base}`);
}

function finished(value: number, rules: NumberRules, says: string | null, taken: string | null): ReadNumber {
  if (!Number.isFinite(value) || Math.abs(value) > 1e9) return { expected: expectedNumber(rules) };
  return { value, says, taken: says === null ? null : taken };
}

function inBase(value: number, unit: string | null, { kind, base }: NumberRules): number {
  if (kind === null || base === null || unit === null || !Number.isFinite(value)) return value;
  const from = unit === "min:s" ? "min" : unit;
  return from === base ? value : convertUnit({ value, from, to: base });
}

/** Whether a number of digits and one sign may as well be thousands. */
function isThousands(digits: string): boolean {
  return /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(digits);
}

type Amount =
  | { readonly value: number; readonly length: number; readonly isThousands: boolean }
  | { readonly expected: string };

/** The number that a text begins with. */
function amountAt(text: string, sign: DecimalSign | null): Amount {
  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    const [whole, units = "0", top, bottom] = fraction;
    if (Number(bottom) === 0) return { expected: "" };
    return { value: Number(units) + Number(top) / Number(bottom), length: whole.length, isThousands: false };
  }
  const digits = DIGITS.exec(text)?.[0].replace(/[.,]$/, (mark) => (mark === sign ? mark : ""));
  if (digits === undefined || digits === "") return { expected: "" };
  const length = digits.length;
  const plain = (number: string, isParted: boolean): Amount => ({
    value: Number(number),
    length,
    isThousands: isParted,
  });
  const grouped = digits.replace(/[ '’]/g, "");
  const isSpaced = grouped !== digits;
  const marks = grouped.replace(/[^.,]/g, "");
  const other = { ".": ",", ",": "." } as const;
  if (marks === "") return plain(grouped, isSpaced);
  if (marks.includes(".") && marks.includes(",")) {
    const last = marks[marks.length - 1] as DecimalSign;
    const isGood = last === "." ? /^\d{1,3}(?:,\d{3})+\.\d+$/.test(grouped) : /^\d{1,3}(?:\.\d{3})+,\d+$/.test(grouped);
    if (!isGood || (sign !== null && sign !== last)) return { expected: "" };
    return plain(grouped.replaceAll(other[last], "").replace(",", "."), true);
  }
  const mark = marks[0] as DecimalSign;
  if (marks.length > 1) {
    if (mark === sign || isSpaced || !/^\d{1,3}(?:[.,]\d{3})+$/.test(grouped)) return { expected: "" };
    return plain(grouped.replaceAll(mark, ""), true);
  }
  if (mark === sign) return plain(grouped.replace(",", "."), isSpaced);
  if (isThousands(grouped) && !isSpaced) {
    if (sign === null) return { expected: "a number whose decimal sign is no question" };
    return plain(grouped.replace(mark, ""), true);
  }
  if (sign === null && !grouped.includes(",")) return plain(grouped, isSpaced);
  return {
    expected: sign === "," ? "a decimal comma, as elsewhere in the file" : "a decimal point, as elsewhere in the file",
  };
}

/** The unit that a word after a number names, where it measures the same; `null` for any other word. */
function unitOf(word: string, { kind, base }: NumberRules): string | null {
  if (kind === null) return null;
  const plain = word
    .toLowerCase()
    .replace(/[”″]|''/g, '"')
    .replace(/\.$/, "");
  if (kind === "time" && base === "min" && plain === "m") return "min";
  const unit = headingUnit(plain);
  if (unit === null || !isUnit(unit)) return null;
  return findUnit(unit, "unitOf: word").kind === kind ? unit : null;
}

/** `12:30` in a column of minutes, `0:12:30` in any of times; `null` when it is no such text. */
function clockOf(text: string, unit: string | null): { readonly value: number; readonly says: string } | null {
  const match = /^(?:(\d{1,2}):)?(\d{1,3}):([0-5]\d)(?:[.,]0+)?(?: ?min)?$/.exec(text);
  if (match === null) return null;
  const [, hours, minutes, seconds] = match;
  if (hours !== undefined)
    return Number(minutes) < 60
      ? {
          value: 60 * Number(hours) + Number(minutes) + Number(seconds) / 60,
          says: "was taken as hours, minutes and seconds",
        }
      : null;
  if (unit !== "min" && unit !== "min:s") return null;
  return { value: Number(minutes) + Number(seconds) / 60, says: "was taken as minutes and seconds" };
}

function short(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** What a cell of this kind should hold, for a person. */
export function expectedNumber({ kind, unit, sign }: NumberRules): string {
  const mark = sign === "," ? "comma" : "point";
  if (kind === null) return `a number with a decimal ${mark}`;
  if (unit === null) return `a number with its unit, as the heading has none`;
  const of = unit === "in" ? "inches" : unit === "min:s" ? "minutes and seconds" : unit;
  return `a number in ${of} ${unit === "in" ? `with a decimal ${mark} or as a fraction (3/8)` : `with a decimal ${mark}`}`;
}
