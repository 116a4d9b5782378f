import { describe, expect, it } from "vitest";
import { readArea } from "../../../../kernel-lib/library/src/units/typed/read-area";

const inches = { sign: ".", kind: "area", base: "cm²", unit: "in²" } as const;

describe("readArea", () => {
  it("takes two sides as a rectangle, in the heading's unit or in one of their own", () => {
    for (const cell of ["9 x 8 1/2", "9x8.5", '9" × 8½"', "9 in by 8.5 in"])
      expect(readArea(cell, inches), cell).toMatchObject({
        value: expect.closeTo(9 * 8.5 * 2.54 ** 2, 9),
        says: "was taken as length by width",
      });
    expect(readArea("20 x 25", { ...inches, unit: "cm²" })).toMatchObject({ value: 500 });
    expect(readArea("20 cm x 25 cm", inches)).toMatchObject({ value: 500 });
  });

  it("reads one number as it stands, and nothing else", () => {
    expect(readArea("76.5 in²", inches)).toMatchObject({ value: expect.closeTo(76.5 * 2.54 ** 2, 9), says: null });
    for (const cell of ["9 x", "9 x tall", "x", "9 x 8 x 2"]) expect(readArea(cell, inches)).toHaveProperty("expected");
  });
});
