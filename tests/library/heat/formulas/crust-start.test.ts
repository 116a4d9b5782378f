import { describe, expect, test } from "vitest";
import { crustStart } from "../../../../kernel-lib/library/src/heat/formulas/crust-start";
import { timeWhen } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;

describe("crustStart", () => {
  test("a chilled slab starts its crust when the solver says so, within 6 %", () => {
    const slab = { food, thicknessMm: 10, coefficientWm2K: 40, airC: 204, startC: 4 };
    const solved = timeWhen(simulateSlab({ ...slab, endMin: 20 }), { column: "surfaceC", value: 99.99 });
    expect(Math.abs(crustStart(slab).surfaceMin / solved - 1)).toBeLessThan(0.06);
    expect(crustStart(slab).extrapolation).toBe(true);
  });
});
