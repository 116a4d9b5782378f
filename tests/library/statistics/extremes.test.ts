import { describe, expect, it } from "vitest";
import { largestOf, smallestOf } from "../../../kernel-lib/library/src/statistics/extremes";

describe("smallestOf and largestOf", () => {
  it("are the least and the greatest of a million values", () => {
    const values = Array.from({ length: 1_000_000 }, (_, at) => ((at * 7919) % 1_000_003) - 500_000);
    expect([smallestOf(values), largestOf(values)]).toEqual([-500_000, 500_002]);
  });

  it("are infinite of none and NaN where one is, as Math.min and Math.max are", () => {
    expect([smallestOf([]), largestOf([])]).toEqual([Math.min(), Math.max()]);
    expect([smallestOf([1, Number.NaN, 2]), largestOf([1, Number.NaN, 2])]).toEqual([Number.NaN, Number.NaN]);
    expect([smallestOf([3]), largestOf(new Set([3, 4]))]).toEqual([3, 4]);
  });
});
