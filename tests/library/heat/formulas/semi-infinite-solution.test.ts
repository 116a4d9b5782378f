import { describe, expect, test } from "vitest";
import { semiInfiniteSolution } from "../../../../kernel-lib/library/src/heat/formulas/semi-infinite-solution";
import { seriesSolution } from "../../../../kernel-lib/library/src/heat/formulas/series-solution";

describe("semiInfiniteSolution", () => {
  test("early on, slab and thick body agree at the surface", () => {
    const biot = 2;
    const fourier = 0.01;
    const slab = 1 - seriesSolution({ biot, fourier }).surface;
    // a half-slab of 10 mm: α = 0.1 mm²/s, t = Fo·ℓ²/α
    const thick = semiInfiniteSolution({
      depthMm: 0,
      timeMin: (fourier * 100) / 0.1 / 60,
      coefficientWm2K: 100,
      conductivityWmK: 0.5,
      diffusivityMm2s: 0.1,
    });
    expect(Math.abs(slab / thick - 1)).toBeLessThan(1e-6);
  });

  test("great coefficients do not overflow", () => {
    const found = semiInfiniteSolution({
      depthMm: 0,
      timeMin: 60,
      coefficientWm2K: 1e5,
      conductivityWmK: 0.5,
      diffusivityMm2s: 0.13,
    });
    expect(found).toBeGreaterThan(0.999);
    expect(found).toBeLessThanOrEqual(1);
  });
});
