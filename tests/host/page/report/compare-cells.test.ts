import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareCells, sortKey } from "../../../../kernel-lib/host/page/report/compare-cells";

describe("sortKey", () => {
  it.each([
    ["12.5 (11.0 to 14.1)", 12.5],
    ["(19 min)", 19],
    ["over 99 %", 99],
    ["≥ 74 °C (165 °F)", 74],
    ["−18 °C (0 °F)", -18],
    ["-3.5", -3.5],
    ["+35 %", 35],
    ["8.7 min: 74 °C (165 °F)", 8.7],
    ["1,150 g", 1150],
    ["1e-3", 0.001],
    ["5 rows, 8 columns", 5],
    ["11 of 14", 11],
  ])("reads the first number of %j", (cell, value) => {
    expect(sortKey(cell)).toBe(value);
  });

  it.each([
    ["11/32 in", (25.4 * 11) / 32],
    ["1 7/16 in", 25.4 * 1.4375],
    ["2 lb 8 oz", 40 * 28.349523125],
    ["2 lb", 32 * 28.349523125],
    ["1 h 20 min", 80],
    ["0.9 kg", 900],
  ])("reads %j with its units", (cell, value) => {
    expect(sortKey(cell)).toBeCloseTo(value, 8);
  });

  it.each(["half sheet, 1150 g", "BL-14", "2026-03-04", "14:30", "3D", "2nd", "trial 2", "never", "1/0"])(
    "takes %j for words",
    (cell) => {
      expect(sortKey(cell)).toBe(cell);
    },
  );

  it.each(["", " ", "–", "—", "-", "\u00a0"])("finds nothing in %j", (cell) => {
    expect(sortKey(cell)).toBeNull();
  });
});

describe("compareCells", () => {
  const sorted = (cells: readonly string[], way: "ascending" | "descending"): string[] =>
    [...cells].sort((one, other) => compareCells(one, other, way));

  it("sorts numbers by value, then words, and what is empty last both ways", () => {
    const cells = ["–", "9.5 (9 to 10)", "never", "(19 min)", "−2", "100"];
    expect(sorted(cells, "ascending")).toEqual(["−2", "9.5 (9 to 10)", "(19 min)", "100", "never", "–"]);
    expect(sorted(cells, "descending")).toEqual(["never", "100", "(19 min)", "9.5 (9 to 10)", "−2", "–"]);
  });

  it("sorts names with numbers by these, and days by the calendar", () => {
    expect(sorted(["trial 10", "trial 9", "Trial 1"], "ascending")).toEqual(["Trial 1", "trial 9", "trial 10"]);
    expect(sorted(["2026-10-01", "2026-02-28", "2025-12-31"], "ascending")[0]).toBe("2025-12-31");
  });

  it("is an order, whatever stands in the cells", () => {
    const cell = fc.oneof(
      fc.string(),
      fc.stringMatching(/^[(~−]?\d{1,3}([.,/]\d{1,2})?( (g|lb|oz|min|h))?\)?$/),
      fc.constantFrom("–", "", "over 9 %"),
    );
    const way = fc.constantFrom("ascending", "descending") as fc.Arbitrary<"ascending" | "descending">;
    fc.assert(
      fc.property(cell, cell, cell, way, (a, b, c, way) => {
        const [ab, ba] = [compareCells(a, b, way), compareCells(b, a, way)];
        expect(Number.isNaN(ab)).toBe(false);
        expect(Math.sign(ab) === -Math.sign(ba)).toBe(true);
        if (ab <= 0 && compareCells(b, c, way) <= 0) expect(compareCells(a, c, way)).toBeLessThanOrEqual(0);
      }),
    );
  });
});
