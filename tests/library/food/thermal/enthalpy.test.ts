import fc from "fast-check";
import { expect, test } from "vitest";
import { enthalpyAt, temperatureFromEnthalpy } from "../../../../kernel-lib/library/src/food/thermal/enthalpy";
import { foods } from "../../heat/foods";

test("temperature → enthalpy → temperature comes back, thawed, frozen and without ice", () => {
  fc.assert(
    fc.property(fc.double({ min: -40, max: 100, noNaN: true }), (temperatureC) => {
      for (const food of Object.values(foods))
        expect(temperatureFromEnthalpy(food, enthalpyAt(food, temperatureC))).toBeCloseTo(temperatureC, 7);
    }),
  );
});

test("enthalpy never falls as the food warms", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -40, max: 99, noNaN: true }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      (t, step) => {
        expect(enthalpyAt(foods.reference, t + step)).toBeGreaterThan(enthalpyAt(foods.reference, t));
      },
    ),
  );
});

test("its slope below freezing is Schwartzberg's apparent specific heat cf + A·|Tf|/T²", () => {
  const slope = (enthalpyAt(foods.reference, -4.999) - enthalpyAt(foods.reference, -5.001)) / 0.002;
  expect(slope).toBeCloseTo(2 + (216.1728 * 1) / 25, 4);
});
