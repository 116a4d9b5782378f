import { describe, expect, it } from "vitest";
import { matchColumns } from "../../../../kernel-lib/library/src/units/columns/match-columns";

const plans = {
  id: { column: "pan", holds: "id" },
  lengthMm: { column: "bottom_length", holds: "length", also: ["length"] },
  floorCm2: { column: "floor", holds: "area" },
  taperDeg: { column: "wall_taper_deg", holds: "number" },
} as const;
interface Row {
  readonly id: string;
  readonly lengthMm: number;
  readonly floorCm2: number;
  readonly taperDeg: number;
}
const match = (headings: readonly string[], cells: Readonly<Record<string, string>> = {}, units?: "us" | "metric") =>
  matchColumns<Row>({ headings, plans, rows: [{ cells }], units });

describe("matchColumns", () => {
  it("knows a heading in whatever dress, with its unit", () => {
    for (const heading of [
      "bottom_length_in",
      "Bottom length (in)",
      "bottom length [inches]",
      "Length, in",
      "LENGTH_IN",
    ])
      expect(match([heading]).headingOf.lengthMm, heading).toEqual({ heading, unit: "in" });
    for (const heading of ["floor_in2", "Floor (in²)", "floor sq in"])
      expect(match([heading]).headingOf.floorCm2, heading).toEqual({ heading, unit: "in²" });
    for (const heading of ["wall_taper_deg", "Wall taper (deg)"])
      expect(match([heading]).headingOf.taperDeg, heading).toEqual({ heading, unit: null });
  });

  it("takes a heading without its unit where every cell has one, and else proposes one of the kitchen's", () => {
    expect(match(["length"], { length: "17 in" })).toMatchObject({
      headingOf: { lengthMm: { unit: null } },
      strange: [],
    });
    const [strange] = match(["length"], { length: "17" }, "us").strange;
    expect(strange.expected).toBe("a heading that ends in its unit, such as bottom_length_in");
    expect(match(["length"], {}, "metric").strange[0].expected).toContain("bottom_length_mm");
    expect(match(["length_g"], {}, "us").strange[0].expected).toBe("a unit of length, such as bottom_length_in");
  });

  it("reads what stands under a mistyped heading, and names what is strange", () => {
    const { headingOf, strange } = match(["bottom_lenght_in", "colour"]);
    expect(headingOf.lengthMm).toEqual({ heading: "bottom_lenght_in", unit: "in" });
    expect(strange).toMatchObject([{ nearest: "bottom_length_in" }, { nearest: null, field: null }]);
  });
});
