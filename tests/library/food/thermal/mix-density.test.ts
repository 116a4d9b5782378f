import fc from "fast-check";
import { expect, test } from "vitest";
import { mixDensity } from "../../../../kernel-lib/library/src/food/thermal/mix-density";

const formed = {
  waterFraction: 0.62,
  proteinFraction: 0.17,
  fatFraction: 0.09,
  carbohydrateFraction: 0.095,
  fibreFraction: 0.007,
  ashFraction: 0.018,
};

test("air takes its share of the volume and nothing else", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (airFraction) => {
      expect(mixDensity(formed, { airFraction })).toBeCloseTo(mixDensity(formed) * (1 - airFraction), 8);
    }),
  );
});

test("freezing makes the mix lighter", () => {
  const thawed = mixDensity(formed, { temperatureC: -5 });
  const frozen = mixDensity(formed, { temperatureC: -5, iceFraction: 0.4 });
  expect(frozen / thawed).toBeGreaterThan(0.94);
  expect(frozen / thawed).toBeLessThan(0.98);
});

test("refuses impossible mixes", () => {
  expect(() => mixDensity({ ...formed, waterFraction: 0.7 })).toThrow("they are over by 0.0800");
  expect(() => mixDensity(formed, { airFraction: 1 })).toThrow("mixDensity: airFraction must be >= 0 and < 1, got 1");
  expect(() => mixDensity(formed, { iceFraction: 0.7 })).toThrow("must be between 0 and 0.62 (the water fraction)");
});
