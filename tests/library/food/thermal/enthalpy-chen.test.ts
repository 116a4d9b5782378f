import { expect, test } from "vitest";
import { enthalpyChen } from "../../../../kernel-lib/library/src/food/thermal/enthalpy-chen";

test("zero at −40 °C, continuous at the freezing point", () => {
  const food = { solidsFraction: 0.28, freezableWaterFraction: 0.63, freezingPointC: -1.7 };
  expect(enthalpyChen({ ...food, temperatureC: -40 })).toBe(0);
  expect(enthalpyChen({ ...food, temperatureC: -1.69999 })).toBeCloseTo(
    enthalpyChen({ ...food, temperatureC: -1.7 }),
    2,
  );
});
