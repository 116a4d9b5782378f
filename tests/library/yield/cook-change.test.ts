import { describe, expect, it } from "vitest";
import { cookChange } from "../../../kernel-lib/library/src/yield/cook-change";

describe("cookChange", () => {
  it("shows oil taken up as a gain above 100 %", () => {
    const change = cookChange({
      massBeforeG: 100,
      massAfterG: 90,
      before: { waterPercent: 70, fatPercent: 4 },
      after: { waterPercent: 60, fatPercent: 9 },
    });
    expect(change.moistureChangePercent).toBeCloseTo(-16, 10);
    expect(change.fatChangePercent).toBeCloseTo(4.1, 10);
    expect(change.fatRetentionPercent).toBeCloseTo(202.5, 10);
  });

  it("has no fat retention where there was no fat", () => {
    const sides = { before: { waterPercent: 80, fatPercent: 0 }, after: { waterPercent: 75, fatPercent: 0 } };
    expect(cookChange({ massBeforeG: 100, massAfterG: 90, ...sides }).fatRetentionPercent).toBeNull();
  });

  it("refuses more than 100 % of water and fat", () => {
    const sides = { before: { waterPercent: 80, fatPercent: 30 }, after: { waterPercent: 75, fatPercent: 5 } };
    expect(() => cookChange({ massBeforeG: 100, massAfterG: 90, ...sides })).toThrow(
      "cookChange: before must hold at most",
    );
  });
});
