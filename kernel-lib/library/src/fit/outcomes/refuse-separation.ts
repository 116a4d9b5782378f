import { fail } from "../../check/check";
import { largestOf, smallestOf } from "../../statistics/extremes";
import type { DesignColumns } from "../models/design-columns";
import { recessionDirection } from "./recession-direction";

/** One side of one observation: the likelihood does not lose when sign · (line + rest · others) rises. */
export interface OutcomeSide {
  readonly observation: number;
  readonly sign: 1 | -1;
  /** entries of the parameters that are no covariate's: a constant, cuts, one over the scale */
  readonly rest: readonly number[];
}

/** What to look through, and the words of the fit for what it finds. */
export interface SeparationSearch {
  readonly where: string;
  readonly design: Pick<DesignColumns, "names" | "columns" | "levels">;
  readonly sides: readonly OutcomeSide[];
  /** what a covariate must leave, and what it does instead */
  readonly parted: string;
  /** what several covariates must leave, what they do together, and what to add */
  readonly partedTogether: string;
  /** what every trial at a word is when its effect runs to +∞, and what to log there */
  readonly allUp: (word: string) => string;
  /** what every trial at a word is when its effect runs to −∞, and what to log there */
  readonly allDown: (word: string) => string;
}

/**
 * Throws when covariates part the outcomes so that the likelihood climbs for ever (see `recessionDirection`), naming the
 * word, the number, or else the fewest covariates that do it together, and what to log. Parameters that are no covariate's
 * must leave a top by themselves.
 */
export function refuseSeparation(search: SeparationSearch): void {
  const { where, design, sides } = search;
  const scaled = design.columns.map(scaledColumn);
  const rowsOf = (columns: readonly ArrayLike<number>[]): number[][] =>
    sides.map(({ observation, sign, rest }) => [
      ...columns.map((column) => sign * column[observation]),
      ...rest.map((entry) => sign * entry),
    ]);
  const parts = (columns: readonly ArrayLike<number>[]): readonly number[] | null =>
    recessionDirection(rowsOf(columns));
  if (parts(scaled) === null) return;

  for (const [name, words] of Object.entries(design.levels)) {
    for (const word of words) {
      const there = wordColumn(design, name, word);
      const signs = new Set(sides.filter(({ observation }) => there[observation] === 1).map(({ sign }) => sign));
      if (signs.size !== 1) continue;
      const says = (signs.has(1) ? search.allUp : search.allDown)(word);
      fail(
        `${where}: ${name}`,
        `must leave a best value for every word, but ${says} there, or leave "${word}" out`,
        word,
      );
    }
  }
  const groups = new Map<string, number[]>();
  design.names.forEach((name, j) => {
    const own = Object.keys(design.levels).find((word) => name.startsWith(`${word}[`)) ?? name;
    groups.set(own, [...(groups.get(own) ?? []), j]);
  });
  for (const [name, [j]] of groups) {
    if (Object.hasOwn(design.levels, name)) continue;
    const direction = parts([scaled[j]]);
    if (direction === null) continue;
    const places = gaps(design.columns[j], sides, Math.sign(direction[0]));
    fail(`${where}: ${name}`, `must leave ${search.parted}, so no slope is the best: log trials ${places}`, name);
  }
  let needed = [...groups.keys()];
  for (const name of groups.keys()) {
    const fewer = needed.filter((one) => one !== name);
    if (parts(fewer.flatMap((one) => groups.get(one) ?? []).map((j) => scaled[j]))) needed = fewer;
  }
  if (needed.length === 1)
    fail(
      `${where}: ${needed[0]}`,
      `must leave ${search.parted}, so no effect is the best: log more trials at each word`,
      needed[0],
    );
  fail(`${where}: ${needed.join(" and ")}`, `must leave ${search.partedTogether}`, needed);
}

/** Centred, so that digits count; the parameters that are no covariate's take up the shift. */
export function scaledColumn(column: Float64Array): Float64Array {
  const low = smallestOf(column);
  const high = largestOf(column);
  return column.map((value) => (2 * value - low - high) / (high - low));
}

/** 1 where an observation carries the word, also for the first word, which has no column of its own. */
function wordColumn(
  { names, columns, levels }: SeparationSearch["design"],
  name: string,
  word: string,
): ArrayLike<number> {
  const at = names.indexOf(`${name}[${word}]`);
  if (at >= 0) return columns[at];
  const others = levels[name].slice(1).map((other) => columns[names.indexOf(`${name}[${other}]`)]);
  return columns[0].map((_, i) => 1 - others.reduce((sum, column) => sum + column[i], 0));
}

/** Where a number's sides part: between the last value on one side of each cut and the first on the other. */
function gaps(column: Float64Array, sides: readonly OutcomeSide[], slope: number): string {
  const cuts = new Map<string, { up: number; down: number }>();
  for (const { observation, sign, rest } of sides) {
    const key = JSON.stringify(rest);
    const cut = cuts.get(key) ?? { up: Number.POSITIVE_INFINITY, down: Number.NEGATIVE_INFINITY };
    const value = slope * column[observation];
    if (sign > 0) cut.up = Math.min(cut.up, value);
    else cut.down = Math.max(cut.down, value);
    cuts.set(key, cut);
  }
  return [...cuts.values()]
    .map(({ up, down }) => [slope * down, slope * up].sort((one, other) => one - other))
    .map(([from, to]) => (from === to ? `around ${from}` : `between ${from} and ${to}`))
    .join(", ");
}
