import { describe, expect, it } from "vitest";
import { yieldFromComposition } from "../../../kernel-lib/library/src/yield/yield-from-composition";

describe("yieldFromComposition", () => {
  const raw = { waterG: 70, proteinG: 18, fatG: 10 };
  const dripped = { waterG: 62.5, proteinG: 22.5, fatG: 12.5 };

  it("finds 80 % by every balance when only water left", () => {
    for (const balance of ["protein", "solids", "non-fat solids"] as const) {
      expect(yieldFromComposition({ before: raw, after: dripped, balance })).toBeCloseTo(80, 10);
    }
  });

  it("refuses what it does not know", () => {
    const after = { ...dripped, waterG: null };
    expect(() => yieldFromComposition({ before: raw, after, balance: "solids" })).toThrow("after.waterG");
    expect(() =>
      yieldFromComposition({ before: { ...raw, fatG: null }, after: dripped, balance: "non-fat solids" }),
    ).toThrow("before: non-fat solids");
    expect(() => yieldFromComposition({ before: raw, after: dripped, balance: "ash" as "solids" })).toThrow(
      "balance must be",
    );
  });
});
