import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evenness } from "../../../kernel-lib/library/src/pan/evenness";
import { checkPan } from "../../../kernel-lib/library/src/pan/pan";
import { PAN_PRESETS, panPreset } from "../../../kernel-lib/library/src/pan/pan-preset";
import { pieceOf } from "../../../kernel-lib/library/src/pan/piece";

describe("pieceOf", () => {
  it("has more surface for each gram the thinner and smaller it is", () => {
    const side = fc.double({ min: 5, max: 80, noNaN: true });
    fc.assert(
      fc.property(side, side, side, (lengthMm, widthMm, thicknessMm) => {
        const whole = pieceOf({ lengthMm, widthMm, thicknessMm, densityKgM3: 1000 });
        const thin = pieceOf({ lengthMm, widthMm, thicknessMm: thicknessMm * 0.9, densityKgM3: 1000 });
        expect(thin.surfaceToVolumePerMm).toBeGreaterThan(whole.surfaceToVolumePerMm);
        expect(whole.surfaceMm2 / (whole.massG * 1000)).toBeCloseTo(whole.surfaceToVolumePerMm, 9);
      }),
    );
  });
});

describe("evenness", () => {
  it("names the reading that cannot be", () => {
    expect(() => evenness([8, 0, 9])).toThrow("evenness: reading 2 must be > 0 mm, got 0");
  });
});

describe("panPreset", () => {
  it("offers only possible pans, each under its own id", () => {
    for (const pan of PAN_PRESETS) expect(checkPan(pan, pan.name)).toBe(pan);
    expect(new Set(PAN_PRESETS.map((pan) => pan.id)).size).toBe(PAN_PRESETS.length);
  });
  it("lists the names when there is no such preset", () => {
    expect(() => panPreset("half moon")).toThrow(/must be one of full sheet, .*got "half moon"/);
  });
});

describe("checkPan", () => {
  it("refuses corners rounder than the pan", () => {
    const pan = panPreset("quarter sheet");
    if (pan.shape !== "rectangle") throw new Error("preset changed shape");
    expect(() => checkPan({ ...pan, cornerRadiusMm: 150 }, "pans.csv row 3")).toThrow(
      "pans.csv row 3: cornerRadiusMm must be at most half the shorter side (101.5 mm), got 150",
    );
  });
});
