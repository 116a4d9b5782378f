import fc from "fast-check";
import { expect, test } from "vitest";
import {
  conductivityLevy,
  conductivityMaxwellEucken,
} from "../../../../kernel-lib/library/src/food/thermal/conductivity-two-phase";

const conductivity = fc.double({ min: 0.02, max: 3, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

test("Levy's form does not mind which phase is called dispersed", () => {
  fc.assert(
    fc.property(conductivity, conductivity, share, (one, other, volume) => {
      const found = conductivityLevy({ continuousWmK: one, dispersedWmK: other, dispersedVolumeFraction: volume });
      const swapped = conductivityLevy({
        continuousWmK: other,
        dispersedWmK: one,
        dispersedVolumeFraction: 1 - volume,
      });
      expect(Math.abs(found / swapped - 1)).toBeLessThan(1e-6);
    }),
  );
});

test("both forms end at the pure phases", () => {
  for (const form of [conductivityLevy, conductivityMaxwellEucken]) {
    expect(form({ continuousWmK: 0.5, dispersedWmK: 2, dispersedVolumeFraction: 0 })).toBeCloseTo(0.5, 10);
    expect(form({ continuousWmK: 0.5, dispersedWmK: 2, dispersedVolumeFraction: 1 })).toBeCloseTo(2, 10);
  }
});
