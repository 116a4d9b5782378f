import { describe, expect, it } from "vitest";
import { drawSlabs, modeSlab } from "../../../../kernel-lib/library/src/crisp/window/draw-slabs";
import { calibrationAt } from "../sample-food";

describe("drawSlabs", () => {
  it("scatters about the mode as the covariance says, correlation included", () => {
    const z = [0, 0, 0, 0, 0, 0, 0, 0, 0];
    const base = calibrationAt(z, 0.5);
    const covariance = base.covariance.map((row) => [...row]);
    covariance[4][5] = covariance[5][4] = -0.2;
    const calibration = { ...base, covariance };
    const place = { applianceId: "basket", loadFraction: 0.6, turned: false };
    const slabs = drawSlabs(calibration, place, { count: 20_000, seed: 3, coreError: 0.02 });
    const mean = (of: (slab: (typeof slabs)[number]) => number): number =>
      slabs.reduce((sum, slab) => sum + of(slab), 0) / slabs.length;
    const water = (slab: (typeof slabs)[number]): number => Math.log(slab.crustWaterKgM3 / 400) / Math.log(1.6);
    const depth = (slab: (typeof slabs)[number]): number => Math.log(slab.crustMm / 0.5) / Math.log(1.8);
    expect(mean(water)).toBeCloseTo(0, 1);
    expect(mean((slab) => water(slab) ** 2)).toBeCloseTo(0.25, 1);
    expect(Math.abs(mean((slab) => water(slab) * depth(slab)) + 0.2)).toBeLessThan(0.01);
    expect(Math.sqrt(mean((slab) => Math.log(slab.coreFactor) ** 2))).toBeCloseTo(0.02, 3);
    expect(modeSlab(calibration, place)).toMatchObject({ coefficientWm2K: 40, crustWaterKgM3: 400, coreFactor: 1 });
  });
});
