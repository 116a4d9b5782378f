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

  test("obeys its surface's balance, k·dΘ/dx = −h·(1 − Θ), for weak and for strong films", () => {
    for (const coefficientWm2K of [5, 50, 500, 5000]) {
      const body = { timeMin: 2, coefficientWm2K, conductivityWmK: 0.45, diffusivityMm2s: 0.13 };
      const at = (depthMm: number): number => semiInfiniteSolution({ ...body, depthMm });
      const step = 1e-3;
      const slope = (-3 * at(0) + 4 * at(step) - at(2 * step)) / (2 * step * 1e-3);
      expect((-0.45 * slope) / (coefficientWm2K * (1 - at(0)))).toBeCloseTo(1, 4);
      expect(at(300)).toBeCloseTo(0, 12);
    }
  });

  test("is smooth where its series gives way to the continued fraction", () => {
    // h√(αt)/k = 5 at the face, just below and just above
    const at = (surface: number): number =>
      semiInfiniteSolution({
        depthMm: 0,
        timeMin: 1,
        coefficientWm2K: (surface * 0.5) / Math.sqrt(0.1e-6 * 60),
        conductivityWmK: 0.5,
        diffusivityMm2s: 0.1,
      });
    expect(at(5.0000001) - at(4.9999999)).toBeLessThan(1e-8);
    // 1 − e^36·erfc 6 (Abramowitz & Stegun, table 7.3: 0.0927766 at 1/36)
    expect(at(6)).toBeCloseTo(1 - 0.0927766, 6);
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
