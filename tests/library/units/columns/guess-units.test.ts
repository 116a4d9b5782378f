import { describe, expect, it } from "vitest";
import { guessUnits } from "../../../../kernel-lib/library/src/units/columns/guess-units";

describe("guessUnits", () => {
  it("goes by the headings that name a unit of the one kind or the other", () => {
    expect(guessUnits(["pan", "depth_in", "batch_lb", "core_c", "time_min", "wall_taper_deg"])).toEqual({
      units: "us",
      of: 3,
      taken: 2,
    });
    expect(guessUnits(["depth_mm", "floor_cm2", "setpoint_f", "batch_kg"])).toEqual({
      units: "metric",
      of: 4,
      taken: 3,
    });
    expect(guessUnits(["floor_in2", "before_oz"]).units).toBe("us");
    for (const heading of ["depth_in", "depth_ft", "floor_in2", "before_oz", "batch_lb", "core_f"])
      expect(guessUnits([heading]), heading).toEqual({ units: "us", of: 1, taken: 1 });
    for (const heading of ["depth_mm", "depth_cm", "depth_m", "floor_cm2", "before_g", "batch_kg", "core_c"])
      expect(guessUnits([heading, heading]), heading).toEqual({ units: "metric", of: 2, taken: 2 });
  });

  it("takes metric when both are as many, or none is named", () => {
    expect(guessUnits(["depth_mm", "setpoint_f"])).toEqual({ units: "metric", of: 2, taken: 1 });
    expect(guessUnits(["pan", "time_min"])).toEqual({ units: "metric", of: 0, taken: 0 });
  });
});
