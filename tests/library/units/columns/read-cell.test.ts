import { describe, expect, it } from "vitest";
import { readCell } from "../../../../kernel-lib/library/src/units/columns/read-cell";

const valueIn = (...given: Parameters<typeof readCell>): unknown => (readCell(...given) as { value: unknown }).value;

describe("readCell", () => {
  it("reads quantities as people type them, in the heading's unit unless they name their own", () => {
    const batch = { column: "batch", holds: "mass" } as const;
    expect(valueIn("2 lb 10 oz", batch, "oz")).toBeCloseTo(42 * 28.349523125, 6);
    expect(valueIn("2 lb 10 oz", batch, null)).toBeCloseTo(42 * 28.349523125, 6);
    const depth = { column: "depth", holds: "length" } as const;
    for (const cell of ["17 1/4", "17-1/4", "17¼", '17 1/4"', "17.25 in"])
      expect(valueIn(cell, depth, "in"), cell).toBeCloseTo(438.15, 9);
    expect(valueIn("390 F", { column: "setpoint", holds: "temperature" }, "°C")).toBeCloseTo(198.889, 3);
    expect(readCell("9", depth, null)).toEqual({ expected: "a number with its unit, as the heading has none" });
    expect(readCell("tall", depth, "in")).toEqual({
      expected: "a number in inches with a decimal point or as a fraction (3/8)",
    });
  });

  it("takes words as an id, and leaves what is none", () => {
    const id = { column: "pan", holds: "id" } as const;
    expect(readCell("Big sheet, old", id, null)).toMatchObject({ value: "Big-sheet-old", taken: "Big-sheet-old" });
    expect(readCell("half_sheet.2", id, null)).toEqual({ value: "half_sheet.2", says: null, taken: null });
    for (const cell of ["?!", "half*sheet", "- -"])
      expect(readCell(cell, id, null)).toMatchObject({ value: cell, says: null });
  });

  it("finds the word of a few that is meant, and says it where another was typed", () => {
    const kind = {
      column: "kind",
      holds: "text",
      among: { "air fryer": [], "fan oven": ["convection oven"] },
    } as const;
    expect(readCell("Air-Fryer", kind, null)).toEqual({ value: "air fryer", says: null, taken: null });
    expect(readCell("convection oven", kind, null)).toMatchObject({ value: "fan oven", says: "was taken as fan oven" });
    expect(readCell("grill", kind, null)).toMatchObject({ value: "grill", says: null });
  });

  it("keeps what says that it is not known", () => {
    expect(readCell("n/a", { column: "power_w", holds: "number" }, null)).toMatchObject({ value: null });
    expect(readCell("?!", { column: "power_w", holds: "number" }, null)).toHaveProperty("expected");
  });
});
