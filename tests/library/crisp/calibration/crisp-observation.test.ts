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
    expect(() => checkObservation({ ...unmeasured, setpointC: 400 })).toThrow(
      "setpointC must be between 120 and 290 °C, got 400",
    );
  });
});
