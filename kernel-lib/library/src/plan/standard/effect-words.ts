import { fail } from "../../check/check";

/** Letters of factors in their order; I is left out, as it stands for the mean. */
export const FACTOR_LETTERS = "ABCDEFGHJKLMNOP";

/** An effect, or its opposite: which factors it multiplies, bit by bit, and its sign. */
export interface EffectWord {
  readonly mask: number;
  readonly sign: 1 | -1;
}

/** `"-ABC"` read; throws at letters beyond `factors`, and at one that stands twice. */
export function readWord(where: string, text: string, factors: number): EffectWord {
  const letters = text.replace(/^[+-]/, "");
  let mask = 0;
  for (const letter of letters) {
    const at = FACTOR_LETTERS.indexOf(letter);
    if (at < 0 || at >= factors) fail(where, `must be made of the letters ${FACTOR_LETTERS.slice(0, factors)}`, text);
    if (mask & (1 << at)) fail(where, "must hold each letter once", text);
    mask |= 1 << at;
  }
  if (mask === 0) fail(where, "must hold at least one letter", text);
  return { mask, sign: text.startsWith("-") ? -1 : 1 };
}

/** The product of two: letters that both have cancel, as ±1 squared is 1. */
export function timesWord(one: EffectWord, other: EffectWord): EffectWord {
  return { mask: one.mask ^ other.mask, sign: one.sign === other.sign ? 1 : -1 };
}

/** All products of some of the words, none left out but the empty one. */
export function productsOf(words: readonly EffectWord[]): readonly EffectWord[] {
  const products: EffectWord[] = [];
  for (const word of words) {
    const before = products.length;
    products.push(word);
    for (let at = 0; at < before; at++) products.push(timesWord(products[at], word));
  }
  return products;
}

/** `"-ABC"`; `"I"` for the mean. */
export function wordText({ mask, sign }: EffectWord): string {
  const letters = [...FACTOR_LETTERS].filter((_, at) => mask & (1 << at)).join("");
  return `${sign < 0 ? "-" : ""}${letters || "I"}`;
}

/** How many factors an effect multiplies. */
export function wordLength({ mask }: EffectWord): number {
  let count = 0;
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++;
  return count;
}

/** Short words first, then by their letters. */
export function byLength(one: EffectWord, other: EffectWord): number {
  const letters = (word: EffectWord): string => wordText({ mask: word.mask, sign: 1 });
  return wordLength(one) - wordLength(other) || (letters(one) < letters(other) ? -1 : 1);
}

/** The sign of an effect at a point of ±1. */
export function signAt({ mask, sign }: EffectWord, point: readonly number[]): number {
  return point.reduce(
    (product, value, at) => (mask & (1 << at) ? product * Math.sign(value) : product),
    sign as number,
  );
}
