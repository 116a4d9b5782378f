import { confoundedBlocks, fractionalFactorial, fullFactorial } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const cube = fullFactorial({ levels: [2, 2, 2, 2] });

describe("confoundedBlocks", () => {
  it("leaves every effect but those it names untouched by any difference between blocks", () => {
    const { blocks, confounded } = confoundedBlocks({ points: cube, words: ["ABC", "-BCD"] });
    expect(confounded).toEqual(["AD", "ABC", "BCD"]);
    for (let mask = 1; mask < 16; mask++) {
      const effect = [..."ABCD"].filter((_, at) => mask & (1 << at)).join("");
      const sums = [0, 0, 0, 0];
      for (const [at, point] of cube.entries())
        sums[blocks[at] - 1] += point.reduce(
          (product, code, factor) => (mask & (1 << factor) ? product * code : product),
          1,
        );
      if (confounded.includes(effect)) expect(sums.map(Math.abs)).toEqual([4, 4, 4, 4]);
      else expect(sums).toEqual([0, 0, 0, 0]);
    }
  });

  it("refuses words that make no blocks", () => {
    expect(() => confoundedBlocks({ points: [], words: ["A"] })).toThrow("at least one point");
    expect(() => confoundedBlocks({ points: [[0, 1]], words: ["A"] })).toThrow("2 codes of -1 or 1");
    expect(() => confoundedBlocks({ points: cube, words: [] })).toThrow("at least one effect");
    expect(() => confoundedBlocks({ points: cube, words: ["AB", "BC", "AC"] })).toThrow("no products of each other");
    const { points } = fractionalFactorial({ factors: 3, generators: ["C=AB"] });
    expect(() => confoundedBlocks({ points, words: ["ABC"] })).toThrow("blocks of one size");
  });
});
