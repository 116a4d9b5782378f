import { describe, expect, it } from "vitest";
import { trueRetention } from "../../../kernel-lib/library/src/yield/true-retention";

describe("trueRetention", () => {
  it("is 100 % when only water leaves, and the yield when nothing is concentrated", () => {
    expect(trueRetention({ contentBefore: 20, contentAfter: 25, massBeforeG: 100, massAfterG: 80 })).toBeCloseTo(
      100,
      10,
    );
    expect(trueRetention({ contentBefore: 20, contentAfter: 20, massBeforeG: 100, massAfterG: 80 })).toBeCloseTo(
      80,
      10,
    );
  });

  it("refuses a raw food without the nutrient", () => {
    expect(() => trueRetention({ contentBefore: 0, contentAfter: 1, massBeforeG: 1, massAfterG: 1 })).toThrow(
      "contentBefore",
    );
  });
});
