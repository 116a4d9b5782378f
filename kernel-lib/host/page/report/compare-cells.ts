/** What a cell is sorted by: a number, else its text, else nothing. */
type SortKey = number | string | null;

/** Units that one column may mix, as multiples of the smallest of their kind. */
const UNITS: Readonly<Record<string, number>> = {
  s: 1 / 60,
  min: 1,
  h: 60,
  mg: 0.001,
  g: 1,
  kg: 1000,
  oz: 28.349523125,
  lb: 453.59237,
  mm: 1,
  cm: 10,
  in: 25.4,
};

/** A whole number, a decimal, a fraction or a whole number and a fraction, and the letters of a unit behind it. */
const QUANTITY = /^(\d[\d,]*(?:\.\d+)?(?:e[+-]?\d+)?)(?:\s+(\d+)\/(\d+)|\/(\d+))?\s*([a-z]+)?/i;

/** What may stand before a number and leave it one. */
const BEFORE = /^(?:[(~≈<>≤≥±]\s*|(?:over|under|about|at least|at most|up to|from)\s+)+/i;

const words = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

/**
 * What a table's cell is sorted by: the first number with its unit (`12.5 (11.0 to 14.1)` is 12.5, `2 lb 8 oz` both parts,
 * `11/32 in` a fraction, `over 99 %` 99), `null` for a dash or nothing, else the text. A date and a time of day are text: their
 * own order is that of their letters.
 */
export function sortKey(cell: string): SortKey {
  const text = cell.replace(/\s+/g, " ").trim();
  if (/^[–—-]?$/.test(text)) return null;
  if (/^\d{4}-\d\d(-\d\d)?/.test(text) || /^\d{1,2}:\d\d/.test(text)) return text;
  let rest = text.replace(BEFORE, "");
  const sign = /^[-−]/.test(rest) ? -1 : 1;
  rest = rest.replace(/^[-−+]\s*/, "");
  let sum: number | null = null;
  let last = Number.POSITIVE_INFINITY;
  for (let match = QUANTITY.exec(rest); match !== null; match = QUANTITY.exec(rest)) {
    const [whole, digits, over, under, part, letters = ""] = match;
    const number = Number(digits.replaceAll(",", ""));
    const value = part ? number / Number(part) : number + (over ? Number(over) / Number(under) : 0);
    const unit = Object.hasOwn(UNITS, letters) ? UNITS[letters] : null;
    if (sum === null && letters !== "" && unit === null && !/^\s/.test(rest.slice(whole.length - letters.length - 1)))
      return text; // 3D, 2nd: a word
    if (sum !== null && (unit === null || unit >= last)) break;
    sum = (sum ?? 0) + value * (unit ?? 1);
    if (unit === null) break;
    last = unit;
    rest = rest.slice(whole.length).replace(/^ /, "");
  }
  return sum === null || !Number.isFinite(sum) ? text : sign * sum;
}

/** Which way a column is sorted. */
export type SortWay = "ascending" | "descending";

/** Compares two cells of a column: numbers by value, then words by letters, and what is empty last, whichever way. */
export function compareCells(one: string, other: string, way: SortWay): number {
  const [a, b] = [sortKey(one), sortKey(other)];
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  const turned = way === "ascending" ? 1 : -1;
  if (typeof a === "number" && typeof b === "number") return turned * (a - b);
  if (typeof a === "string" && typeof b === "string") return turned * words.compare(a, b);
  return turned * (typeof a === "number" ? -1 : 1);
}
