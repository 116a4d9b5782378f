import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { choleskyFactor, inverseFrom, solveLower, solveUpper } from "../linear-algebra/cholesky";

/** One score, of one thing by one judge. */
export interface Score {
  readonly thing: string;
  readonly judge: string;
  readonly score: number;
}

/** A number with its standard error; null where nothing is left over to tell it from. */
export interface Level {
  readonly value: number;
  readonly standardError: number | null;
}

/** What things score once every judge's habit is taken off, and those habits. */
export interface JudgeLevels {
  /** in the order of their first score: the score that all judges together would give */
  readonly things: ReadonlyMap<string, Level>;
  /** how far above the others each judge scores; they add up to 0 */
  readonly judges: ReadonlyMap<string, Level>;
  /** standard deviation of one score about thing and judge; null without degrees of freedom */
  readonly sd: number | null;
  readonly df: number;
}

/** Whether every judge is joined to every other by things that two of them scored, if need be through others. */
export function judgesAreJoined(scores: readonly Score[]): boolean {
  const reached = new Set(scores.slice(0, 1).map(({ judge }) => judge));
  for (let before = 0; before < reached.size; ) {
    before = reached.size;
    const things = new Set(scores.filter(({ judge }) => reached.has(judge)).map(({ thing }) => thing));
    for (const { thing, judge } of scores) if (things.has(thing)) reached.add(judge);
  }
  return scores.every(({ judge }) => reached.has(judge));
}

/**
 * Takes judges' habits off their scores, whoever scored what: least squares of score = thing + judge, the judges' levels
 * adding up to 0. A thing that only strict judges scored is not worse for it.
 *
 * @param scores any number of each; a judge need not have scored every thing
 * @returns with standard errors; throws where judges are not joined by things that they both scored
 * @example
 * judgeLevels([
 *   { thing: "A", judge: "x", score: 5 }, { thing: "A", judge: "y", score: 7 }, { thing: "B", judge: "y", score: 9 },
 * ]).things.get("B").value; // → 8
 */
export function judgeLevels(scores: readonly Score[]): JudgeLevels {
  if (scores.length === 0) fail("judgeLevels: scores", "must hold a score", "none");
  for (const { thing, judge, score } of scores)
    if (!Number.isFinite(score))
      fail(`judgeLevels: the score of ${thing} by ${judge}`, "must be a finite number", score);
  const judges = [...new Set(scores.map(({ judge }) => judge))];
  if (!judgesAreJoined(scores))
    fail("judgeLevels: scores", "must join all judges by things that two of them scored", judges.join(", "));
  const things = [...new Set(scores.map(({ thing }) => thing))];
  const thingAt = new Map(things.map((thing, at) => [thing, at]));
  const judgeAt = new Map(judges.map((judge, at) => [judge, at]));
  const last = judges.length - 1;
  const size = things.length + last;
  const normal = new Float64Array(size * size);
  const right = new Float64Array(size);
  const rows = scores.map(({ thing, judge, score }) => {
    const judgeNumber = judgeAt.get(judge) as number;
    // the last judge's level is minus the sum of the others
    const columns: [number, number][] = [[thingAt.get(thing) as number, 1]];
    if (judgeNumber < last) columns.push([things.length + judgeNumber, 1]);
    else for (let other = 0; other < last; other++) columns.push([things.length + other, -1]);
    for (const [a, weightA] of columns) {
      right[a] += weightA * score;
      for (const [b, weightB] of columns) normal[a * size + b] += weightA * weightB;
    }
    return { columns, score };
  });
  const lower = choleskyFactor(normal, size);
  const found = solveUpper(lower, size, solveLower(lower, size, right));
  const df = scores.length - size;
  const squares = rows.reduce(
    (sum, { columns, score }) => sum + (score - columns.reduce((is, [at, weight]) => is + weight * found[at], 0)) ** 2,
    0,
  );
  const sd = df > 0 ? Math.sqrt(squares / df) : null;
  const inverse = inverseFrom(lower, size);
  const errorOf = (variance: number): number | null => (sd === null ? null : sd * Math.sqrt(variance));
  const levelAt = (at: number): Level => ({ value: found[at], standardError: errorOf(inverse[at * size + at]) });
  const lastLevel = (): Level => {
    let value = 0;
    let variance = 0;
    for (let a = things.length; a < size; a++) {
      value -= found[a];
      for (let b = things.length; b < size; b++) variance += inverse[a * size + b];
    }
    return { value, standardError: errorOf(variance) };
  };
  return freezeDeep({
    things: new Map(things.map((thing, at) => [thing, levelAt(at)])),
    judges: new Map(judges.map((judge, at) => [judge, at < last ? levelAt(things.length + at) : lastLevel()])),
    sd,
    df,
  });
}
