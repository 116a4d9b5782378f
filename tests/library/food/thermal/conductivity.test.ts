import fc from "fast-check";
import { expect, test } from "vitest";
import { mixConductivity } from "../../../../kernel-lib/library/src/food/thermal/conductivity";

const part = fc.double({ min: 0.01, max: 1, noNaN: true });

test("every model lies between the series and the parallel bound", () => {
  fc.assert(
    fc.property(
      part,
      part,
      part,
      part,
      fc.double({ min: 0, max: 1, noNaN: true }),
      (water, protein, fat, starch, frozen) => {
        const sum = water + protein + fat + starch;
        const mix = {
          waterFraction: water / sum,
          proteinFraction: protein / sum,
          fatFraction: fat / sum,
          carbohydrateFraction: starch / sum,
          fibreFraction: 0,
          ashFraction: 0,
        };
        const options = { temperatureC: -10, iceFraction: (frozen * water) / sum };
        const low = mixConductivity(mix, { ...options, model: "series" });
        const high = mixConductivity(mix, { ...options, model: "parallel" });
        for (const model of ["levy", "geometric", "maxwell-eucken"] as const) {
          const found = mixConductivity(mix, { ...options, model });
          expect(found).toBeGreaterThanOrEqual(low * (1 - 1e-9));
          expect(found).toBeLessThanOrEqual(high * (1 + 1e-9));
        }
      },
    ),
  );
});

test("air lowers it, an unknown model is refused", () => {
  const water = {
    waterFraction: 1,
    proteinFraction: 0,
    fatFraction: 0,
    carbohydrateFraction: 0,
    fibreFraction: 0,
    ashFraction: 0,
  };
  expect(mixConductivity(water, { airFraction: 0.2 })).toBeLessThan(mixConductivity(water));
  expect(() => mixConductivity(water, { model: "mean" as "levy" })).toThrow(
    "mixConductivity: model must be one of levy",
  );
});
