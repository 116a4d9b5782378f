import { describe, expect, it } from "vitest";
import { columnUnit } from "../../../../kernel-lib/library/src/units/columns/column-unit";
import { headingIn } from "../../../../kernel-lib/library/src/units/columns/heading-in";
import type { UnitKind } from "../../../../kernel-lib/library/src/units/unit-table";

describe("headingIn", () => {
  it("writes inches, square inches, ounces and °F, or millimetres, cm², grams and °C", () => {
    const both = (holds: UnitKind | "text" | "number"): string[] =>
      (["us", "metric"] as const).map((units) => headingIn({ column: "x", holds }, units));
    expect(both("length")).toEqual(["x_in", "x_mm"]);
    expect(both("area")).toEqual(["x_in2", "x_cm2"]);
    expect(both("mass")).toEqual(["x_oz", "x_g"]);
    expect(both("temperature")).toEqual(["x_f", "x_c"]);
    expect(both("time")).toEqual(["x_min", "x_min"]);
    expect(both("text")).toEqual(["x", "x"]);
    expect(both("number")).toEqual(["x", "x"]);
  });

  it("writes for every kind what columnUnit reads", () => {
    const kinds = [
      "length",
      "area",
      "mass",
      "volume",
      "time",
      "energy",
      "temperature",
      "temperatureDifference",
    ] as const;
    for (const kind of kinds)
      for (const units of ["us", "metric"] as const)
        expect(columnUnit(headingIn({ column: "x", holds: kind }, units)).kind).toBe(kind);
  });
});
