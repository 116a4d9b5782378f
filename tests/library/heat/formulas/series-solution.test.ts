import { describe, expect, test } from "vitest";
import { brickSeriesSolution, seriesSolution } from "../../../../kernel-lib/library/src/heat/formulas/series-solution";

describe("seriesSolution", () => {
  test("loses on average what passes its surface: dΘ̄/dFo = −m·Bi·Θs, m 1, 2, 3", () => {
    for (const [shape, faces] of [
      ["slab", 1],
      ["cylinder", 2],
      ["sphere", 3],
    ] as const)
      for (const biot of [0.2, 1, 8])
        for (const fourier of [0.01, 0.1, 0.7]) {
          const at = (fo: number) => seriesSolution({ shape, biot, fourier: fo });
          const step = 1e-4 * fourier;
          const rate = (at(fourier + step).mean - at(fourier - step).mean) / (2 * step);
          expect(rate / (-faces * biot * at(fourier).surface)).toBeCloseTo(1, 5);
        }
  });

  test("obeys conduction inside: ∂Θ/∂Fo = Θ″ + (m − 1)/X·Θ′", () => {
    for (const [shape, faces] of [
      ["slab", 1],
      ["cylinder", 2],
      ["sphere", 3],
    ] as const) {
      const here = (position: number, fourier: number): number =>
        seriesSolution({ shape, biot: 2, fourier, position }).here;
      const [x, fo, dx, df] = [0.6, 0.2, 1e-3, 1e-5];
      const rate = (here(x, fo + df) - here(x, fo - df)) / (2 * df);
      const slope = (here(x + dx, fo) - here(x - dx, fo)) / (2 * dx);
      const bend = (here(x + dx, fo) - 2 * here(x, fo) + here(x - dx, fo)) / (dx * dx);
      expect(rate / (bend + ((faces - 1) / x) * slope)).toBeCloseTo(1, 4);
    }
  });

  test("starts whole, is at its centre where position 0 says, at its surface where 1 does", () => {
    for (const shape of ["slab", "cylinder", "sphere"] as const) {
      const early = seriesSolution({ shape, biot: 1, fourier: 0.0005 });
      expect(early.centre).toBeCloseTo(1, 8);
      const at = (position: number) => seriesSolution({ shape, biot: 1, fourier: 0.3, position });
      expect(at(0).here).toBeCloseTo(at(0).centre, 12);
      expect(at(1).here).toBeCloseTo(at(1).surface, 12);
      expect(seriesSolution({ shape, biot: 1, fourier: 0.3 }).here).toBe(at(0).here);
    }
  });

  test("of a box is the product of its slabs, on average too", () => {
    const box = { coefficientWm2K: 25, conductivityWmK: 0.45, densityKgM3: 1050, specificHeatKJkgK: 3.4, timeMin: 5 };
    const sides = { lengthMm: 40, widthMm: 30, thicknessMm: 12 };
    const slabs = Object.values(sides).map((mm) => {
      const half = mm / 2000;
      return seriesSolution({ biot: (25 * half) / 0.45, fourier: ((0.45 / (1050 * 3400)) * 300) / half ** 2 });
    });
    const { centre, mean } = brickSeriesSolution({ ...box, ...sides });
    expect(centre).toBeCloseTo(slabs[0].centre * slabs[1].centre * slabs[2].centre, 12);
    expect(mean).toBeCloseTo(slabs[0].mean * slabs[1].mean * slabs[2].mean, 12);
  });

  test("shapes and places that are not known are refused", () => {
    expect(() => seriesSolution({ shape: "egg" as "sphere", biot: 1, fourier: 1 })).toThrow(
      'shape must be slab, cylinder or sphere, got "egg"',
    );
    expect(() => seriesSolution({ biot: 1, fourier: 1, position: 1.1 })).toThrow("position must be between 0 and 1");
    const box = {
      lengthMm: 40,
      widthMm: 30,
      thicknessMm: 12,
      coefficientWm2K: 25,
      conductivityWmK: 0.45,
      densityKgM3: 1050,
      specificHeatKJkgK: 3.4,
      timeMin: 5,
    };
    expect(() => brickSeriesSolution({ ...box, timeMin: -1 })).toThrow("timeMin must be >= 0 min, got -1");
    expect(() => brickSeriesSolution({ ...box, widthMm: 0 })).toThrow("widthMm must be > 0 mm, got 0");
  });

  test("too early for the series is refused", () => {
    expect(() => seriesSolution({ biot: 1, fourier: 1e-5 })).toThrow("semiInfiniteSolution");
    expect(() => seriesSolution({ biot: -1, fourier: 1 })).toThrow("biot must be > 0");
  });
});
