import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { millimetres } from "../../../kernel-lib/library/src/units/kitchen-units";
import { lengthText, ownLengthText } from "../../../kernel-lib/library/src/units/length-text";

describe("lengthText", () => {
  it("says one side or several, sixteenths of an inch beside millimetres", () => {
    expect(lengthText(40, "us")).toBe("1 9/16 in (40 mm)");
    expect(lengthText([457, 330.4], "us")).toBe("18 × 13 in (457 × 330 mm)");
    expect(lengthText([40, 25], "metric")).toBe("40 × 25 mm (1 9/16 × 1 in)");
  });

  it("reads back to half of its last digit", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), (mm) => {
        expect(Math.abs(millimetres(ownLengthText(mm, "us")) - mm)).toBeLessThanOrEqual(25.4 / 32 + 1e-6);
        expect(Math.abs(millimetres(ownLengthText(mm, "metric")) - mm)).toBeLessThanOrEqual(0.5 + 1e-6);
      }),
    );
  });

  it("refuses what is no length", () => {
    expect(() => lengthText([], "us")).toThrow("lengthText: lengthMm must hold a length in mm, got []");
    expect(() => lengthText(-3, "us")).toThrow("must be >= 0 mm");
  });
});
