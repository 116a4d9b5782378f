import { expect, test } from "vitest";
import { iceFraction, iceFractionTchigeov } from "../../../../kernel-lib/library/src/food/thermal/ice-fraction";
import { foods } from "../../heat/foods";

test("no ice above the freezing point, never more than the freezable water", () => {
  expect(iceFraction(foods.reference, -0.5)).toBe(0);
  expect(iceFraction(foods.reference, -40)).toBeLessThan(0.648);
  expect(iceFraction(foods.reference, -40)).toBeGreaterThan(0.6);
});

test("Tchigeov's curve starts at the freezing point and refuses what it does not cover", () => {
  const food = { waterFraction: 0.735, freezingPointC: -1 };
  expect(iceFractionTchigeov({ ...food, temperatureC: -1 })).toBe(0);
  expect(() => iceFractionTchigeov({ ...food, temperatureC: -60 })).toThrow("must be between -45 and 100 °C, got -60");
});
