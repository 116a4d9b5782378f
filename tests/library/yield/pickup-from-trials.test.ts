import { describe, expect, it } from "vitest";
import { pickupFromTrials } from "../../../kernel-lib/library/src/yield/pickup-from-trials";

describe("pickupFromTrials", () => {
  it("gives mean, spread and t interval of the weighings", () => {
    const weighings = [10, 12, 14].map((percent) => ({ beforeG: 100, afterG: 100 + percent }));
    const measured = pickupFromTrials(weighings, "substrate");
    expect(measured.percent).toBeCloseTo(12, 10);
    expect(measured.sdPercent).toBeCloseTo(2, 10);
    expect(measured.standardErrorPercent).toBeCloseTo(2 / Math.sqrt(3), 10);
    expect(measured.interval95[1]).toBeCloseTo(12 + (4.30265273 * 2) / Math.sqrt(3), 7);
  });

  it("needs two weighings", () => {
    expect(() => pickupFromTrials([{ beforeG: 100, afterG: 112 }], "finished")).toThrow("must be two or more");
  });
});
