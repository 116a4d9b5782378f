import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { CodedPoint } from "../factor/factor";
import { byLength, productsOf, readWord, signAt, wordText } from "./effect-words";

/** Which effects are given up so that a two-level plan falls into blocks. */
export interface ConfoundedBlocksOptions {
  /** runs of a two-level plan, all codes ±1 */
  readonly points: readonly CodedPoint[];
  /** effects that may be lost among the blocks: `["ABC"]` makes two blocks, two words make four */
  readonly words: readonly string[];
}

/** A two-level plan in blocks. */
export interface ConfoundedBlocks {
  /** block of each point, from 1 */
  readonly blocks: readonly number[];
  /** every effect that cannot be told from the blocks: the words and their products */
  readonly confounded: readonly string[];
}

/**
 * Parts a two-level plan into 2^w blocks by the signs of w effects (Yates 1937), so that differences between blocks, such as
 * two mornings, touch those effects and their products only.
 *
 * @param options points of ±1, and the words to give up
 * @returns block of each point, and what is lost; throws where the blocks would differ in size
 * @example
 * const points = fullFactorial({ levels: [2, 2, 2] });
 * confoundedBlocks({ points, words: ["ABC"] }).blocks; // → [1, 2, 2, 1, 2, 1, 1, 2]
 */
export function confoundedBlocks({ points, words }: ConfoundedBlocksOptions): ConfoundedBlocks {
  const where = "confoundedBlocks";
  if (points.length === 0) fail(`${where}: points`, "must hold at least one point", points);
  const factors = points[0].length;
  const strange = points.find((point) => point.length !== factors || point.some((code) => Math.abs(code) !== 1));
  if (strange !== undefined) fail(`${where}: points`, `must hold ${factors} codes of -1 or 1`, strange);
  if (words.length === 0) fail(`${where}: words`, "must hold at least one effect", words);
  const read = words.map((text) => readWord(`${where}: words`, text, factors));
  const lost = productsOf(read);
  if (lost.some(({ mask }) => mask === 0)) fail(`${where}: words`, "must be no products of each other", words);
  const blocks = points.map(
    (point) => 1 + read.reduce((sum, word, at) => sum + (signAt(word, point) > 0 ? 2 ** at : 0), 0),
  );
  const sizes = Array.from({ length: 2 ** read.length }, (_, at) => blocks.filter((block) => block === at + 1).length);
  if (sizes.some((size) => size !== sizes[0]))
    fail(`${where}: words`, `must part the ${points.length} points into blocks of one size: take other effects`, sizes);
  return freezeDeep({
    blocks,
    confounded: lost
      .map(({ mask }) => ({ mask, sign: 1 as const }))
      .sort(byLength)
      .map(wordText),
  });
}
