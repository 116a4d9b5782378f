import { describe, expect, it } from "vitest";
import { columnUnit } from "../../../../kernel-lib/library/src/units/columns/column-unit";

describe("columnUnit", () => {
  it.each([
    ["thickness_in", "thickness", "in", "length"],
    ["thickness_mm", "thickness", "mm", "length"],
    ["setpoint_f", "setpoint", "°F", "temperature"],
    ["setpoint_c", "setpoint", "°C", "temperature"],
    ["mass_before_g", "mass_before", "g", "mass"],
    ["batch_lb", "batch", "lb", "mass"],
    ["time_min", "time", "min", "time"],
    ["rise_k", "rise", "K", "temperatureDifference"],
  ])("%s", (heading, name, unit, kind) => {
    expect(columnUnit(heading)).toEqual({ name, unit, kind });
  });

  it("refuses a heading without a unit", () => {
    for (const heading of ["thickness", "thickness_", "_mm", "thickness_ell"]) {
      expect(() => columnUnit(heading)).toThrow("must end in a unit");
    }
  });
});
