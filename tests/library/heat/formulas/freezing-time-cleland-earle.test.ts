import { describe, expect, test } from "vitest";
import { conductivityAt } from "../../../../kernel-lib/library/src/food/thermal/conductivity-curve";
import { enthalpyAt } from "../../../../kernel-lib/library/src/food/thermal/enthalpy";
import {
  freezingTimeClelandEarle,
  outOfRange,
} from "../../../../kernel-lib/library/src/heat/formulas/freezing-time-cleland-earle";
import { foods } from "../foods";

const food = foods.reference;

describe("freezingTimeClelandEarle", () => {
  const slab = { food, thicknessMm: 20, coefficientWm2K: 60, airC: -30, startC: 10 };

  test("has its numbers by hand, for the reference food", () => {
    const { biot, stefan, plank } = freezingTimeClelandEarle(slab);
    const perVolume = 1000 * food.densityKgM3;
    const heat = -perVolume * enthalpyAt(food, -10);
    expect(stefan).toBeCloseTo((perVolume * 2 * 29) / heat, 9);
    expect(plank).toBeCloseTo((perVolume * 3.5 * 11) / heat, 9);
    expect(biot).toBeCloseTo((60 * 0.02) / conductivityAt(food, -10), 9);
  });

  test("takes longer to a colder centre, as the logarithm of what is left to the air", () => {
    const to = (centreC: number): number => freezingTimeClelandEarle({ ...slab, centreC }).timeMin;
    expect(to(-10)).toBe(freezingTimeClelandEarle(slab).timeMin);
    const { stefan } = freezingTimeClelandEarle(slab);
    const further = 1 - ((1.65 * stefan) / conductivityAt(food, -10)) * Math.log((-20 + 30) / (-10 + 30));
    expect(to(-20) / to(-10)).toBeCloseTo(further, 9);
    expect(further).toBeGreaterThan(1);
  });

  test("refuses air that the centre cannot pass, and a start in the ice", () => {
    expect(() => freezingTimeClelandEarle({ ...slab, airC: -15, centreC: -15 })).toThrow("the centre tends to -15 °C");
    // the form counts its heat down to −10 °C, whatever the centre
    expect(() => freezingTimeClelandEarle({ ...slab, airC: -8, centreC: -5 })).toThrow("the centre tends to -8 °C");
    expect(() => freezingTimeClelandEarle({ ...slab, airC: -10, centreC: -5 })).toThrow("the centre tends to -10 °C");
    expect(() => freezingTimeClelandEarle({ ...slab, centreC: -1 })).toThrow(
      "centreC must be below the freezing point",
    );
    expect(() => freezingTimeClelandEarle({ ...slab, startC: -2 })).toThrow("startC must be between -1 and 100");
    expect(freezingTimeClelandEarle({ ...slab, startC: -1 }).plank).toBe(0);
  });

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

describe("outOfRange", () => {
  test("names only what lies outside, its very ends being inside, each with its unit where it has one", () => {
    expect(
      outOfRange([
        { name: "Bi", value: 0.5, range: [0.5, 22] },
        { name: "Ste", value: 22, range: [0.5, 22] },
        { name: "Pk", value: 22.01, range: [0.5, 22] },
        { name: "The freezing point of", value: -2, range: [-1.4, -0.4], unit: "°C" },
        { name: "NaN", value: Number.NaN, range: [0, 1] },
      ]),
    ).toEqual([
      "Pk 22.0 is outside 0.5 to 22.",
      "The freezing point of -2.00 °C is outside -1.4 to -0.4 °C.",
      "NaN NaN is outside 0 to 1.",
    ]);
  });
});
