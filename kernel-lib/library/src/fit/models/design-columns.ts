import { fail } from "../../check/check";
import { largestOf, smallestOf } from "../../statistics/extremes";

/** Covariates by name: numbers, or words (an appliance, a kitchen) that become one 0/1 column for each but the first. */
export type Covariates = Readonly<Record<string, readonly number[] | readonly string[]>>;

/** The columns that covariates become, and how to make a row for a new case. */
export interface DesignColumns {
  readonly names: readonly string[];
  readonly columns: readonly Float64Array[];
  /** the words of each word covariate, the reference first */
  readonly levels: Readonly<Record<string, readonly string[]>>;
  /** least and greatest value of each numeric covariate */
  readonly ranges: Readonly<Record<string, readonly [number, number]>>;
}

/**
 * Turns covariates into columns, numbers first; a word covariate's columns are named `appliance[large]`, against its first
 * word. Beside a constant a number must vary; without one it need only differ from zero.
 */
export function designColumns(where: string, covariates: Covariates, n: number, constant = true): DesignColumns {
  const names: string[] = [];
  const columns: Float64Array[] = [];
  const levels = new Map<string, readonly string[]>();
  const ranges = new Map<string, readonly [number, number]>();
  const numbersFirst = Object.entries(covariates).sort(
    (one, other) => Number(isWords(one[1])) - Number(isWords(other[1])),
  );
  for (const [name, values] of numbersFirst) {
    if (values.length !== n)
      fail(`${where}: ${name}`, `must hold one entry for each of the ${n} observations`, values.length);
    if (isWords(values)) {
      const words = [...new Set(values)];
      if (words.length < 2)
        fail(`${where}: ${name}`, "must hold at least two different words, or be left out", words[0]);
      levels.set(name, words);
      for (const level of words.slice(1)) {
        names.push(`${name}[${level}]`);
        columns.push(Float64Array.from(values, (value) => (value === level ? 1 : 0)));
      }
      continue;
    }
    values.forEach((value, i) => {
      if (!Number.isFinite(value)) fail(`${where}: ${name}[${i}]`, "must be a finite number", value);
    });
    names.push(name);
    columns.push(Float64Array.from(values));
    const range = [smallestOf(values), largestOf(values)] as const;
    ranges.set(name, range);
    if (range[0] === 0 && range[1] === 0 && !constant) {
      fail(`${where}: ${name}`, `must not be 0 throughout: log trials at another ${name}, or leave it out`, 0);
    }
    if (range[0] === range[1] && constant) {
      fail(`${where}: ${name}`, `must vary: log trials at a second value of ${name}, or leave it out`, values[0]);
    }
  }
  return { names, columns, levels: Object.fromEntries(levels), ranges: Object.fromEntries(ranges) };
}

/** One case's entries in the same columns; throws when a covariate is missing or a word is unknown. */
export function designRow(
  where: string,
  design: Pick<DesignColumns, "levels" | "ranges">,
  at: Readonly<Record<string, number | string>>,
): { readonly row: readonly number[]; readonly extrapolated: boolean } {
  const row: number[] = [];
  let extrapolated = false;
  const order = new Set([...Object.keys(design.ranges), ...Object.keys(design.levels)]);
  for (const name of Object.keys(at))
    if (!order.has(name)) fail(`${where}: ${name}`, `must be one of ${[...order].join(", ")}`, name);
  for (const [name, [low, high]] of Object.entries(design.ranges)) {
    const value = at[name];
    if (typeof value !== "number" || !Number.isFinite(value))
      fail(`${where}: ${name}`, "must be a finite number", value);
    row.push(value as number);
    if ((value as number) < low || (value as number) > high) extrapolated = true;
  }
  for (const [name, words] of Object.entries(design.levels)) {
    const value = at[name];
    if (typeof value !== "string" || !words.includes(value))
      fail(`${where}: ${name}`, `must be one of ${words.join(", ")}`, value);
    for (const word of words.slice(1)) row.push(word === value ? 1 : 0);
  }
  return { row, extrapolated };
}

function isWords(values: readonly number[] | readonly string[]): values is readonly string[] {
  return typeof values[0] === "string";
}
