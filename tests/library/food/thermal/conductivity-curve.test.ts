import { expect, test } from "vitest";
import { conductivityAt } from "../../../../kernel-lib/library/src/food/thermal/conductivity-curve";
import { foods } from "../../heat/foods";

test("the curve is continuous at the freezing point and tends to the frozen value", () => {
  expect(conductivityAt(foods.reference, -1.0000001)).toBeCloseTo(0.49, 5);
  expect(conductivityAt(foods.reference, -18)).toBeCloseTo(1.443889, 6);
  expect(conductivityAt(foods.reference, 74)).toBe(0.49);
});
