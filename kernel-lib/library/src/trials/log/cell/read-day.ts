/** In which order a file writes day and month where both are numbers; `null` when nothing tells. */
export type DayOrder = "d/m/y" | "m/d/y" | null;

/** A day as read, `2026-03-14`, or what was expected in its place. */
export type ReadDay = { readonly day: string; readonly says: string | null } | { readonly expected: string };

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const WEEKDAY = /^(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun)[a-z]{0,6}\.?,? +/i;
const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;
const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})([-/.]) ?(\d{1,2})\2 ?(\d{4}|\d{2})$/;
const DAY_NAMED = /^(\d{1,2})(?:st|nd|rd|th)?[- .]{1,2}([a-z]{3,9})\.?,?[- ](\d{4}|\d{2})$/i;
const MONTH_NAMED = /^([a-z]{3,9})\.?[- ](\d{1,2})(?:st|nd|rd|th)?,?[- ](\d{4})$/i;
const AT_TIME = /[T ]\d{1,2}:\d{2}(?::\d{2}(?:\.\d{1,6})?)?(?: ?[ap]m|Z)?$/i;

/** The order of day and month that the days of a file show by themselves, as 3/14/2026 does. */
export function dayOrder(cells: Iterable<string>): DayOrder {
  let dayFirst = 0;
  let monthFirst = 0;
  for (const cell of cells) {
    if (cell.length > LONGEST) continue;
    const match = YEAR_LAST.exec(cell.replace(AT_TIME, ""));
    if (match === null) continue;
    const [first, second] = [Number(match[1]), Number(match[3])];
    if (first > 12 && second <= 12) dayFirst++;
    if (second > 12 && first <= 12) monthFirst++;
  }
  if (dayFirst > 0 && monthFirst === 0) return "d/m/y";
  return monthFirst > 0 && dayFirst === 0 ? "m/d/y" : null;
}

/** The longest cell that is read as a day: our judgement. */
const LONGEST = 60;

/**
 * Reads a day as people type it: `2026-03-14`, `14 Mar 2026`, `3/14/2026`. Where day and month could be either, as in
 * `11/3/2026`, the file's order decides, and without one the day is refused.
 */
export function readDay(cell: string, order: DayOrder): ReadDay {
  const iso = ISO.exec(cell);
  if (iso !== null) return dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]), null);
  if (cell.length > LONGEST) return { expected: EXPECTED };
  const hasTime = AT_TIME.test(cell);
  const text = cell.replace(AT_TIME, "").trim().replace(WEEKDAY, "");
  const says = hasTime && !/[T ]0?0:00(?::00(?:\.0+)?)?Z?$/.test(cell) ? "the time of day was left out" : null;
  const bare = ISO.exec(text);
  if (bare !== null) return dayOf(Number(bare[1]), Number(bare[2]), Number(bare[3]), says);
  const first = YEAR_FIRST.exec(text);
  if (first !== null)
    return dayOf(Number(first[1]), Number(first[3]), Number(first[4]), "was taken as year, month and day");
  const named = DAY_NAMED.exec(text) ?? monthFirst(text);
  if (named !== null) {
    const month = monthOf(named[2]);
    if (month === 0) return { expected: EXPECTED };
    return dayOf(fullYear(named[3]), month, Number(named[1]), "was taken as the day that it names");
  }
  const last = YEAR_LAST.exec(text);
  if (last === null) return { expected: EXPECTED };
  const [one, two, year] = [Number(last[1]), Number(last[3]), fullYear(last[4])];
  if (one === two) return dayOf(year, one, two, "was taken as the day that it names");
  if (one > 12) return dayOf(year, two, one, "was taken as day, month and year");
  if (two > 12) return dayOf(year, one, two, "was taken as month, day and year");
  if (order === "d/m/y")
    return dayOf(year, two, one, "was taken as day, month and year, as other days of the file or its heading say");
  if (order === "m/d/y")
    return dayOf(year, one, two, "was taken as month, day and year, as other days of the file or its heading say");
  return {
    expected: `a day such as 2026-03-14; this may be ${isoText(year, one, two)} or ${isoText(year, two, one)}, and the heading "date (m/d/y)" or "date (d/m/y)" says which`,
  };
}

const EXPECTED = "a day such as 2026-03-14";

function dayOf(year: number, month: number, day: number, says: string | null): ReadDay {
  const date = new Date(Date.UTC(year, month - 1, day));
  const holds = year >= 1900 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return holds ? { day: isoText(year, month, day), says } : { expected: EXPECTED };
}

function isoText(year: number, month: number, day: number): string {
  return `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

function fullYear(text: string): number {
  return text.length === 2 ? 2000 + Number(text) : Number(text);
}

function monthOf(word: string): number {
  const lower = word.toLowerCase();
  const names = ["january", "february", "march", "april", "may", "june", "july", "august", "september", "october"];
  const full = [...names, "november", "december"];
  const at = lower === "sept" ? 8 : MONTHS.findIndex((short, index) => short === lower || full[index] === lower);
  return at + 1;
}

function monthFirst(text: string): readonly string[] | null {
  const match = MONTH_NAMED.exec(text);
  return match === null ? null : [match[0], match[2], match[1], match[3]];
}
