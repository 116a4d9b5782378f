import { describe, expect, test } from "vitest";
import { freezingTimeClelandEarle } from "../../../../kernel-lib/library/src/heat/formulas/freezing-time-cleland-earle";
import { foods } from "../foods";

const food = foods.reference;

describe("freezingTimeClelandEarle", () => {
  const slab = { food, thicknessMm: 20, coefficientWm2K: 60, airC: -30, startC: 10 };

  test("outside it says which number leaves it", () => {
    const gentle = freezingTimeClelandEarle({ ...slab, thicknessMm: 8, coefficientWm2K: 8 });
    expect(gentle.extrapolation).toBe(true);
    expect(gentle.notes.join(" ")).toMatch(/Bi 0\.0\d+ is outside 0\.5 to 22/);
  });

  test("a food that freezes lower than it was checked for is flagged: there it is up to 22 % short", () => {
    const inside = freezingTimeClelandEarle({ ...slab, food: { ...food, freezingPointC: -1.3 } });
    expect(inside.extrapolation).toBe(false);
    const lower = freezingTimeClelandEarle({ ...slab, food: { ...food, freezingPointC: -2.4 } });
    expect(lower.extrapolation).toBe(true);
    expect(lower.notes).toEqual(["The freezing point of -2.40 °C is outside -1.4 to -0.4 °C."]);
  });
});
