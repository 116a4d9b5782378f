import {
  blockRuns,
  centralComposite,
  designQuality,
  fullFactorial,
  polynomialTerms,
  termsModel,
} from "slabwright/plan";
import { describe, expect, it } from "vitest";

const factors = ["a", "b", "c"];
const model = termsModel({ factors, terms: polynomialTerms(factors, "interactions") });
const points = fullFactorial({ levels: [2, 2, 2] });

describe("blockRuns", () => {
  it("finds the blocks of a cube that touch no line and no product: by the sign of abc", () => {
    const { blocks, efficiency } = blockRuns({ points, model, sizes: [4, 4] });
    expect(efficiency).toBeCloseTo(100, 9);
    const sign = points.map(([a, b, c]) => a * b * c);
    expect(new Set(blocks.map((block, at) => `${block} ${sign[at]}`)).size).toBe(2);
  });

  it("finds blocks of a central composite that touch no coefficient, where there are some", () => {
    const two = termsModel({ factors: ["a", "b"], terms: polynomialTerms(["a", "b"]) });
    const plan = centralComposite({ factors: 2, alpha: "blocks" });
    const { blocks, efficiency } = blockRuns({ points: plan.points, model: two, sizes: [7, 7] });
    expect(efficiency).toBeCloseTo(100, 6);
    expect([1, 2].map((block) => blocks.filter((one) => one === block).length)).toEqual([7, 7]);
  });

  it("gives the efficiency that the determinants with and without steps have", () => {
    const sizes = [3, 3, 2];
    const { blocks, efficiency } = blockRuns({
      points,
      model: termsModel({ factors, terms: ["1", "a", "b", "c"] }),
      sizes,
    });
    const stepped = {
      terms: ["1", "a", "b", "c", "second", "third"],
      row: (at: number): readonly number[] => [1, ...points[at], Number(blocks[at] === 2), Number(blocks[at] === 3)],
    };
    const all = points.map((_, at) => at);
    const withSteps = designQuality({ points: all, model: stepped, region: all }).logDeterminant;
    // steps alone: |1'1| with two indicators is the product of the three sizes
    const within = withSteps - Math.log(3 * 3 * 2);
    expect(efficiency).toBeCloseTo(100 * Math.exp((within - 3 * Math.log(8)) / 3), 6);
  });

  it("says what does not go together", () => {
    expect(() => blockRuns({ points, model, sizes: [4, 3] })).toThrow("sizes must add up to the 8 runs, got 7");
    expect(() => blockRuns({ points, model, sizes: [2, 2, 2, 2] })).toThrow(
      "take fewer blocks, more runs or fewer terms",
    );
    const noConstant = termsModel({ factors, terms: ["a", "b"] });
    expect(() => blockRuns({ points, model: noConstant, sizes: [4, 4] })).toThrow("must have a constant");
  });
});
