import { expect, test } from "vitest";
import { choiOkos } from "../../../../kernel-lib/library/src/food/thermal/choi-okos";

test("water conducts and holds heat as the steam tables say", () => {
  // IAPWS values at 20 °C, from memory: k 0.598 W/(m·K), density 998.2 kg/m³, cp 4.184 kJ/(kg·K)
  const water = choiOkos("water", 20);
  expect(water.conductivityWmK).toBeCloseTo(0.598, 1);
  expect(Math.abs(water.densityKgM3 - 998.2)).toBeLessThan(3);
  expect(Math.abs(water.specificHeatKJkgK - 4.184)).toBeLessThan(0.01);
});

test("refuses what the functions do not cover", () => {
  expect(() => choiOkos("ice", 5)).toThrow("choiOkos: temperatureC must be between -40 and 0 °C for ice, got 5");
  expect(() => choiOkos("fat", 200)).toThrow("must be between -40 and 150 °C, got 200");
  expect(() => choiOkos("air" as "ash", 20)).toThrow("component must be one of water, ice");
});
