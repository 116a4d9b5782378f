import { describe, expect, it } from "vitest";
import { airAtLoadC, coefficientAtLoad, crowdingOf } from "../../../../kernel-lib/library/src/crisp/clocks/load-effect";

describe("load effect", () => {
  it("leaves a loose layer alone and takes most from a covered floor", () => {
    expect(crowdingOf(null)).toBe(0);
    expect(crowdingOf(0.4)).toBe(0);
    expect(crowdingOf(1)).toBeCloseTo(1, 12);
    expect(airAtLoadC(200, 0.6)).toBe(200);
    expect(airAtLoadC(200, 1)).toBeCloseTo(195, 12);
    expect(coefficientAtLoad(40, 0.2, 1, 0.08, false)).toBeCloseTo(32, 12);
    expect(coefficientAtLoad(40, 0.2, 0, 0.08, true)).toBeCloseTo(43.2, 12);
    expect(crowdingOf(0.8)).toBeCloseTo(0.5, 12);
    expect(airAtLoadC(200, null)).toBe(200);
    // a floor packed beyond what the loss was meant for keeps a fifth, a turn that harms at least half
    expect(coefficientAtLoad(40, 0.9, 1, 0.08, false)).toBeCloseTo(8, 12);
    expect(coefficientAtLoad(40, 0.2, 0, -0.7, true)).toBeCloseTo(20, 12);
    expect(coefficientAtLoad(40, 0.2, 0, -0.7, false)).toBe(40);
    expect(() => crowdingOf(1.5)).toThrow(/loadFraction must be between 0 and 1.2/);
  });
});
