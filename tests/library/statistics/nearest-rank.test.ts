import { describe, expect, it } from "vitest";
import { nearestRank } from "../../../kernel-lib/library/src/statistics/nearest-rank";

describe("nearestRank", () => {
  it("takes the ends, the middle and the nearest of what lies between, always one of the values", () => {
    const sorted = Float64Array.from({ length: 1001 }, (_, at) => at / 10);
    expect([0, 0.025, 0.5, 0.975, 1].map((share) => nearestRank(sorted, share))).toEqual([0, 2.5, 50, 97.5, 100]);
    expect(nearestRank([1, 10], 0.49)).toBe(1);
    expect(nearestRank([1, 10], 0.51)).toBe(10);
  });

  it("keeps what never comes apart from what does", () => {
    const never = [8, 9, Number.POSITIVE_INFINITY];
    expect(nearestRank(never, 0.7)).toBe(9);
    expect(nearestRank(never, 0.8)).toBe(Number.POSITIVE_INFINITY);
  });
});
