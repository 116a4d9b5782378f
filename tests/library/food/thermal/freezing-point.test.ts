import { expect, test } from "vitest";
import { freezingPoint } from "../../../../kernel-lib/library/src/food/thermal/freezing-point";

const mix = {
  waterFraction: 0.62,
  proteinFraction: 0.17,
  fatFraction: 0.09,
  carbohydrateFraction: 0.095,
  fibreFraction: 0.007,
  ashFraction: 0.018,
};

test("salt and sugar both lower it", () => {
  const plain = freezingPoint(mix).freezingPointC;
  expect(freezingPoint(mix, { saltFraction: 0.012 }).freezingPointC).toBeLessThan(plain);
  expect(freezingPoint(mix, { sugarFraction: 0.02 }).freezingPointC).toBeLessThan(plain);
});

test("more salt than ash, more sugar than carbohydrate are refused", () => {
  expect(() => freezingPoint(mix, { saltFraction: 0.03 })).toThrow(
    "saltFraction must be at most the ash (0.018), got 0.03",
  );
  expect(() => freezingPoint(mix, { sugarFraction: 0.2 })).toThrow("sugarFraction must be at most the carbohydrate");
});

test("pure water freezes at the ice point", () => {
  const water = {
    waterFraction: 1,
    proteinFraction: 0,
    fatFraction: 0,
    carbohydrateFraction: 0,
    fibreFraction: 0,
    ashFraction: 0,
  };
  expect(freezingPoint(water).freezingPointC).toBeCloseTo(-0.05, 6);
});
