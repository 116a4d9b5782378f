import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { millimetres } from "../../../kernel-lib/library/src/units/kitchen-units";
import { ownThicknessText, thicknessText, thicknessWords } from "../../../kernel-lib/library/src/units/thickness-text";

describe("thicknessText", () => {
  it("says thirty-seconds of an inch beside millimetres", () => {
    expect(thicknessText(11.1, "us")).toBe("7/16 in (11.1 mm)");
    expect(thicknessText(11.1, "metric")).toBe("11.1 mm (7/16 in)");
    expect(thicknessText(8.7, "us")).toBe("11/32 in (8.7 mm)");
    expect(thicknessText(millimetres("1 1/32 in"), "us")).toBe("1 1/32 in (26.2 mm)");
    expect(thicknessText(0.3, "us")).toBe("0.012 in (0.30 mm)");
  });

  it("reads back to half of its last digit", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (mm) => {
        const halfMm = mm < 1 ? [0.0005 * 25.4, 0.005] : [25.4 / 64, 0.05];
        expect(Math.abs(millimetres(ownThicknessText(mm, "us")) - mm)).toBeLessThanOrEqual(halfMm[0] + 1e-6);
        expect(Math.abs(millimetres(ownThicknessText(mm, "metric")) - mm)).toBeLessThanOrEqual(halfMm[1] + 1e-6);
      }),
    );
  });

  it("refuses what is no thickness", () => {
    expect(() => thicknessText(Number.NaN, "us")).toThrow("thicknessText: thicknessMm must be >= 0 mm, got NaN");
  });
});

describe("thicknessWords", () => {
  it("says millimetres alone in a metric kitchen, both units in a US one", () => {
    expect(thicknessWords(8.7, "metric")).toBe("8.7 mm");
    expect(thicknessWords([8, 8], "us")).toBe("5/16 in (8.0 mm)");
    expect(thicknessWords([0.5, 8], "us")).toBe("0.020 to 5/16 in (0.50 to 8.0 mm)");
  });
});
