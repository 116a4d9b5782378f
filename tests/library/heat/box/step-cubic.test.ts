import { expect, test } from "vitest";
import { passesZero, stepCubic } from "../../../../kernel-lib/library/src/heat/box/step-cubic";

test("the cubic is exact for a cubic, and passes through its ends", () => {
  const curve = (u: number): number => 2 - 3 * u + u ** 2 - 4 * u ** 3;
  const slope = (u: number): number => -3 + 2 * u - 12 * u ** 2;
  for (const u of [0, 0.2, 0.7, 1])
    expect(stepCubic(curve(0), curve(1), slope(0), slope(1), u)).toBeCloseTo(curve(u), 12);
});

test("passesZero finds where a curve passes 0, rising or falling", () => {
  expect(passesZero((u) => u * u - 0.25)).toBeCloseTo(0.5, 12);
  expect(passesZero((u) => 0.25 - u * u)).toBeCloseTo(0.5, 12);
});
