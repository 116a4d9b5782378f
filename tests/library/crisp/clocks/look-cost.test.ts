import { describe, expect, it } from "vitest";
import { heatedMin, LOOK_MIN } from "../../../../kernel-lib/library/src/crisp/clocks/look-cost";

describe("heatedMin", () => {
  it("takes off what each look before took, not the one at which pieces are taken out", () => {
    expect(heatedMin([], 12)).toBe(12);
    expect(heatedMin([6, 8, 12], 12, 0.3)).toBeCloseTo(11.4, 12);
    expect(heatedMin([6, 8, 12], 13, 0.3)).toBeCloseTo(12.1, 12);
    expect(heatedMin([6, 8], 12)).toBeCloseTo(12 - 2 * LOOK_MIN, 12);
  });

  it("leaves half of the time at least, and never runs backwards", () => {
    expect(heatedMin([1, 2, 3, 4, 5], 6, 2)).toBe(3);
    for (let minute = 1; minute < 20; minute++)
      expect(heatedMin([3.5], minute + 1)).toBeGreaterThan(heatedMin([3.5], minute));
  });
});
