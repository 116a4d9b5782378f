import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { trialOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { thicknessDoubt } from "../../../../kernel-lib/library/src/trials/pieces/thickness-doubt";

const trial = { ...trialOf(loadKitchen(), "BL-01"), thicknessMm: 10, probesMm: [9, 10, 11, 10] };

describe("thicknessDoubt", () => {
  it("is the standard error of the mean reading, on that mean", () => {
    expect(thicknessDoubt({ ...trial, thicknessSdMm: 0.8 })).toBeCloseTo(0.04, 12);
  });

  it("is never under 1 %, however alike the readings, and 3 % where none was repeated", () => {
    expect(thicknessDoubt({ ...trial, thicknessSdMm: 0 })).toBe(0.01);
    expect(thicknessDoubt({ ...trial, thicknessSdMm: null, probesMm: [10] })).toBe(0.03);
  });
});
