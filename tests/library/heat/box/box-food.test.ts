import { expect, test } from "vitest";
import { conductivityAt } from "../../../../kernel-lib/library/src/food/thermal/conductivity-curve";
import { enthalpyAt } from "../../../../kernel-lib/library/src/food/thermal/enthalpy";
import { iceFraction } from "../../../../kernel-lib/library/src/food/thermal/ice-fraction";
import {
  boxFood,
  capacityOf,
  conductivityOf,
  enthalpyOf,
  iceShareOf,
  potentialOf,
} from "../../../../kernel-lib/library/src/heat/box/box-food";
import { foods } from "../foods";

const food = boxFood(foods.reference);
const TEMPERATURES = [-30, -5, -1.2, 3, 80];

test("the curves are those of the food, in SI", () => {
  for (const c of TEMPERATURES) {
    expect(enthalpyOf(food, c)).toBeCloseTo(1000 * enthalpyAt(foods.reference, c), 6);
    expect(conductivityOf(food, c)).toBeCloseTo(conductivityAt(foods.reference, c), 12);
    if (c < -1) expect(iceShareOf(food, c)).toBeCloseTo(iceFraction(foods.reference, c), 12);
  }
});

test("capacity is the slope of the enthalpy, conductivity that of the potential, on both sides of freezing", () => {
  for (const c of TEMPERATURES) {
    const slope = (curve: typeof enthalpyOf): number => (curve(food, c + 1e-5) - curve(food, c - 1e-5)) / 2e-5;
    expect(slope(enthalpyOf) / capacityOf(food, c)).toBeCloseTo(1, 5);
    expect(slope(potentialOf) / conductivityOf(food, c)).toBeCloseTo(1, 6);
  }
  expect(potentialOf(food, -1)).toBe(0);
});
