import { describe, expect, test } from "vitest";
import { workableTime } from "../../../../kernel-lib/library/src/heat/freezing/workable-time";
import { valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { foods } from "../foods";

const food = foods.reference;

describe("workableTime", () => {
  test("thicker slabs and colder rooms stay workable longer, and the surface is at its limit when it ends", () => {
    const found = workableTime({ food, thicknessMm: 15 });
    expect(valueAt(found.run, "surfaceC", found.timeMin)).toBeCloseTo(-1, 6);
    expect(workableTime({ food, thicknessMm: 25 }).timeMin).toBeGreaterThan(found.timeMin);
    expect(workableTime({ food, thicknessMm: 15, airC: 12 }).timeMin).toBeGreaterThan(found.timeMin);
    const piece = workableTime({ food, thicknessMm: 15, widthMm: 30, lengthMm: 30 });
    expect(piece.timeMin).toBeLessThan(found.timeMin);
    expect(() => workableTime({ food, thicknessMm: 15, airC: -5 })).toThrow("must be warmer than the freezing point");
  });
});
