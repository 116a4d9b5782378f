import { expect, test } from "vitest";
import { besselJ } from "../../../../kernel-lib/library/src/heat/formulas/bessel";

test("Bessel functions at their tabled zeros and at 1 (Abramowitz & Stegun, table 9.1 and 9.5)", () => {
  for (const zero of [2.404825557695773, 5.520078110286311, 30.634606468431976])
    expect(Math.abs(besselJ(0, zero))).toBeLessThan(1e-13);
  expect(besselJ(0, 1)).toBeCloseTo(0.7651976865579666, 13);
  expect(besselJ(1, 1)).toBeCloseTo(0.4400505857449335, 13);
});
