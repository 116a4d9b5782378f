import { describe, expect, it } from "vitest";
import { checkObservation } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-observation";
import { unmeasured } from "../sample-food";

describe("checkObservation", () => {
  it("names the trial and the field that cannot be", () => {
    expect(checkObservation(unmeasured)).toBe(unmeasured);
    expect(() => checkObservation({ ...unmeasured, thicknessMm: 0 })).toThrow(
      "observation T-1: thicknessMm must be > 0 mm, got 0",
    );
    expect(() => checkObservation({ ...unmeasured, notCrispMin: 8, crispMin: 8 })).toThrow(
      "must be after the last not-crisp check at 8 min",
    );
    expect(() => checkObservation({ ...unmeasured, crispScores: [5, 11] })).toThrow("score must be between 0 and 9");
    const ranges: readonly [keyof typeof unmeasured, number, number][] = [
      ["setpointC", 120, 290],
      ["startC", -40, 40],
      ["loadFraction", 0, 1.2],
      ["lossPercent", -2, 80],
    ];
    for (const [field, low, high] of ranges) {
      for (const end of [low, high]) expect(() => checkObservation({ ...unmeasured, [field]: end })).not.toThrow();
      for (const past of [low - 0.1, high + 0.1])
        expect(() => checkObservation({ ...unmeasured, [field]: past })).toThrow(
          `${field} must be between ${low} and ${high}`,
        );
    }
    for (const [change, sentence] of [
      [{ thicknessSeMm: -0.1 }, "thicknessSeMm must be >= 0 mm"],
      [{ sidesMm: [40, 0] as const }, "sidesMm must be > 0 mm, got 0"],
      [{ timeMin: 0 }, "timeMin must be > 0 min"],
      [{ looksMin: [4, -1] }, "looksMin must be >= 0 min, got -1"],
      [{ coreC: Number.NaN }, "coreC must be a finite number"],
      [{ restedCoreC: Number.NaN }, "coreC must be a finite number"],
      [{ brownScores: [-1] }, "score must be between 0 and 9"],
    ] as const)
      expect(() => checkObservation({ ...unmeasured, ...change })).toThrow(sentence);
    const checked = { ...unmeasured, notCrispMin: 8, crispMin: 8.1, sidesMm: [40, 20] as const, coreC: 70 };
    expect(checkObservation(checked)).toBe(checked);
    expect(() => checkObservation({ ...unmeasured, setpointC: 400 })).toThrow(
      "setpointC must be between 120 and 290 °C, got 400",
    );
  });
});
