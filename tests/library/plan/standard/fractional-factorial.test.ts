import fc from "fast-check";
import { fractionalFactorial } from "slabwright/plan";
import { describe, expect, it } from "vitest";
import { readWord, signAt } from "../../../../kernel-lib/library/src/plan/standard/effect-words";

/** Factors and generators of fractions that have enough words of two letters or more to choose from. */
const SIZES = [
  [3, 1],
  [4, 1],
  [5, 1],
  [5, 2],
  [6, 2],
  [6, 3],
  [7, 3],
  [7, 4],
] as const;
const fractions = fc.constantFrom(...SIZES).chain(([factors, made]) => {
  const basic = "ABCDEFG".slice(0, factors - made);
  const words = Array.from({ length: 2 ** basic.length }, (_, mask) =>
    [...basic].filter((_, at) => mask & (1 << at)).join(""),
  ).filter((word) => word.length > 1);
  const signed = fc.tuple(
    fc.shuffledSubarray(words, { minLength: made, maxLength: made }),
    fc.array(fc.constantFrom("", "-"), { minLength: made, maxLength: made }),
  );
  return signed.map(([chosen, signs]) => ({
    factors,
    generators: chosen.map((word, at) => `${"ABCDEFG"[basic.length + at]} = ${signs[at]}${word}`),
  }));
});

describe("fractionalFactorial", () => {
  it("names as aliases exactly the effects whose columns are the same, with their signs", () => {
    fc.assert(
      fc.property(fractions, ({ factors, generators }) => {
        const { points, aliases, definingRelation, resolution } = fractionalFactorial({ factors, generators });
        expect(points.length).toBe(2 ** (factors - generators.length));
        const column = (text: string): string =>
          points.map((point) => signAt(readWord("column", text, factors), point)).join(" ");
        const groups = aliases.map((group) => new Set(group.map(column)));
        for (const group of groups) expect(group.size).toBe(1);
        expect(new Set(groups.map((group) => [...group][0])).size).toBe(groups.length);
        for (const word of definingRelation) expect(column(word)).toBe(points.map(() => 1).join(" "));
        // nothing is missing: 2^k − 1 effects, each once
        const named = [...aliases.flat(), ...definingRelation].map((text) => text.replace("-", ""));
        expect(new Set(named).size).toBe(2 ** factors - 1);
        expect(named.length).toBe(2 ** factors - 1);
        expect(resolution).toBe(
          definingRelation.reduce((least, word) => Math.min(least, word.replace("-", "").length), 99),
        );
      }),
    );
  });

  it("refuses generators that make no fraction", () => {
    const of =
      (factors: number, ...generators: string[]) =>
      () =>
        fractionalFactorial({ factors, generators });
    expect(of(2, "B=A")).toThrow("factors must be a whole number from 3 to 15");
    expect(of(3)).toThrow("without one, take fullFactorial");
    expect(of(3, "B=A", "C=A")).toThrow("must be at most 1 for 3 factors");
    expect(of(4, "D=A")).toThrow("must set no two factors alike");
    expect(of(5, "D=AB", "E=AB")).toThrow("must set no two factors alike");
    expect(of(5, "D=AB", "D=AC")).toThrow("must hold one for factor E");
    expect(of(5, "D=AB", "E=AD")).toThrow("made of the letters ABC");
    expect(of(4, "AB=D")).toThrow('as "D=AB" does');
    expect(of(4, "D")).toThrow('as "D=AB" does');
    expect(of(4, "D=AB=C")).toThrow('as "D=AB" does');
  });
});
