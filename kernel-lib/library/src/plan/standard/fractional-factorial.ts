import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { CodedPoint } from "../factor/factor";
import {
  byLength,
  type EffectWord,
  FACTOR_LETTERS,
  productsOf,
  readWord,
  signAt,
  timesWord,
  wordLength,
  wordText,
} from "./effect-words";
import { fullFactorial } from "./full-factorial";

/** Which fraction of a two-level plan. */
export interface FractionalFactorialOptions {
  /** 3 to 15, lettered A, B, … without I */
  readonly factors: number;
  /** one for each factor beyond the basic ones: `["D=AB", "E=-AC"]` */
  readonly generators: readonly string[];
}

/** A fraction of a two-level plan, with what it cannot tell apart. */
export interface FractionalFactorial {
  readonly points: readonly CodedPoint[];
  /** words that are the same as the mean in these runs: `["ABD", "ACE", "BCDE"]` stands for I = ABD = ACE = BCDE */
  readonly definingRelation: readonly string[];
  /** letters in the shortest of those words: 3 mixes main effects with pairs, 4 pairs with pairs, 5 neither */
  readonly resolution: number;
  /** effects that these runs cannot tell apart, in groups, each from the shortest; `-` marks an opposite sign */
  readonly aliases: readonly (readonly string[])[];
}

/**
 * A 2^(k−p) fraction of a two-level plan (Box & Hunter 1961): a full plan in the first k − p factors; each other factor is set
 * to the product of those that its generator names. The defining relation is all products of the generators' words; an
 * effect's aliases are its products with them.
 *
 * @param options how many factors, and p generators
 * @returns 2^(k−p) points in coded units, defining relation, resolution, aliases
 * @example
 * const half = fractionalFactorial({ factors: 3, generators: ["C=AB"] });
 * half.points; // → [[-1, -1, 1], [1, -1, -1], [-1, 1, -1], [1, 1, 1]]
 * half.aliases; // → [["A", "BC"], ["B", "AC"], ["C", "AB"]]
 *
 * Reference: Box, Hunter & Hunter, Statistics for Experimenters, 2nd ed. 2005, ch. 6 (from memory).
 */
export function fractionalFactorial(options: FractionalFactorialOptions): FractionalFactorial {
  const where = "fractionalFactorial";
  const { factors, generators } = options;
  if (!(Number.isInteger(factors) && factors >= 3 && factors <= FACTOR_LETTERS.length))
    fail(`${where}: factors`, `must be a whole number from 3 to ${FACTOR_LETTERS.length}`, factors);
  const basic = factors - generators.length;
  if (generators.length === 0)
    fail(`${where}: generators`, "must hold at least one generator; without one, take fullFactorial", generators);
  if (basic < 2) fail(`${where}: generators`, `must be at most ${factors - 2} for ${factors} factors`, generators);
  const made = generators.map((text) => readGenerator(`${where}: generators`, text, basic, factors));
  const missing = FACTOR_LETTERS.slice(basic, factors)
    .split("")
    .find((_, at) => !made.some(({ factor }) => factor === basic + at));
  if (missing !== undefined) fail(`${where}: generators`, `must hold one for factor ${missing}`, generators);

  const relation = productsOf(made.map(({ factor, word }) => timesWord({ mask: 1 << factor, sign: 1 }, word))).toSorted(
    byLength,
  );
  const resolution = wordLength(relation[0]);
  if (resolution < 3)
    fail(
      `${where}: generators`,
      "must set no two factors alike: give each a product of its own, of two letters or more",
      generators,
    );
  const points = fullFactorial({ levels: Array.from({ length: basic }, () => 2) }).map((point) => {
    const whole = [...point, ...made.map(() => 0)];
    for (const { factor, word } of made) whole[factor] = signAt(word, point);
    return whole;
  });
  return freezeDeep({
    points,
    definingRelation: relation.map(wordText),
    resolution,
    aliases: aliasGroups(factors, relation).map((group) => group.map(wordText)),
  });
}

function readGenerator(
  where: string,
  text: string,
  basic: number,
  factors: number,
): { factor: number; word: EffectWord } {
  const [left, right, more] = text.replaceAll(" ", "").split("=");
  const factor = left.length === 1 ? FACTOR_LETTERS.indexOf(left) : -1;
  if (right === undefined || more !== undefined || factor < basic || factor >= factors)
    fail(
      where,
      `must set one of ${FACTOR_LETTERS.slice(basic, factors)} to a product of ${FACTOR_LETTERS.slice(0, basic)}, as "D=AB" does`,
      text,
    );
  return { factor, word: readWord(where, right, basic) };
}

/** All effects but the mean's own, each with those that are the same in the runs; shortest first. */
function aliasGroups(factors: number, relation: readonly EffectWord[]): readonly (readonly EffectWord[])[] {
  const seen = new Set<number>([0, ...relation.map(({ mask }) => mask)]);
  const effects = Array.from({ length: 2 ** factors - 1 }, (_, at): EffectWord => ({ mask: at + 1, sign: 1 }));
  const groups: (readonly EffectWord[])[] = [];
  for (const effect of effects.sort(byLength)) {
    if (seen.has(effect.mask)) continue;
    const group = [effect, ...relation.map((word) => timesWord(effect, word)).sort(byLength)];
    for (const { mask } of group) seen.add(mask);
    groups.push(group);
  }
  return groups;
}
