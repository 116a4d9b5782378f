import { expect, test } from "vitest";
import { besselJ } from "../../../../kernel-lib/library/src/heat/formulas/bessel";

test("Bessel functions at their tabled zeros and at 1 (Abramowitz & Stegun, table 9.1 and 9.5)", () => {
  for (const zero of [2.404825557695773, 5.520078110286311, 30.634606468431976])
    expect(Math.abs(besselJ(0, zero))).toBeLessThan(1e-13);
  expect(besselJ(0, 1)).toBeCloseTo(0.7651976865579666, 13);
  expect(besselJ(1, 1)).toBeCloseTo(0.4400505857449335, 13);
});

test("Bessel functions are even or odd with their order, and step from order to order", () => {
  for (const x of [0.3, 2, 9.7, 41]) {
    expect(besselJ(0, -x)).toBeCloseTo(besselJ(0, x), 13);
    expect(besselJ(1, -x)).toBeCloseTo(-besselJ(1, x), 13);
    // J(n−1) + J(n+1) = 2n/x·Jn (Abramowitz & Stegun, 9.1.27)
    for (const order of [1, 2, 5])
      expect(besselJ(order - 1, x) + besselJ(order + 1, x)).toBeCloseTo(((2 * order) / x) * besselJ(order, x), 12);
  }
  expect(besselJ(0, 0)).toBeCloseTo(1, 14);
  expect(besselJ(3, 0)).toBeCloseTo(0, 14);
});
