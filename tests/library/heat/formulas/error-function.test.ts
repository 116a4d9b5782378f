import { expect, test } from "vitest";
import { complementaryError, errorFunction } from "../../../../kernel-lib/library/src/heat/formulas/error-function";

test("erf and erfc as in Abramowitz & Stegun, table 7.1", () => {
  expect(errorFunction(0.5)).toBeCloseTo(0.5204998778, 10);
  expect(errorFunction(1)).toBeCloseTo(0.8427007929, 10);
  expect(errorFunction(2)).toBeCloseTo(0.995322265, 9);
  expect(complementaryError(2)).toBeCloseTo(0.004677735, 9);
});
