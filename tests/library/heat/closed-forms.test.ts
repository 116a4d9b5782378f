import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coreTimeClosedForm } from "../../../kernel-lib/library/src/heat/core-time-closed-form";
import { crustDepthMm, crustMin, crustSurfaceC } from "../../../kernel-lib/library/src/heat/crust-depth";
import { crustStart } from "../../../kernel-lib/library/src/heat/crust-start";
import { equivalentDimension } from "../../../kernel-lib/library/src/heat/equivalent-dimension";
import { freezingFront } from "../../../kernel-lib/library/src/heat/freezing-front";
import { freezingTimeClelandEarle } from "../../../kernel-lib/library/src/heat/freezing-time-cleland-earle";
import { freezingTimePham } from "../../../kernel-lib/library/src/heat/freezing-time-pham";
import { freezingTimePlank } from "../../../kernel-lib/library/src/heat/freezing-time-plank";
import { timeWhen } from "../../../kernel-lib/library/src/heat/heat-run";
import { radiationCoefficient } from "../../../kernel-lib/library/src/heat/radiation-coefficient";
import { semiInfiniteSolution } from "../../../kernel-lib/library/src/heat/semi-infinite-solution";
import { seriesSolution } from "../../../kernel-lib/library/src/heat/series-solution";
import { simulateSlab } from "../../../kernel-lib/library/src/heat/simulate-slab";
import { saturationPressurePa, wetSurface } from "../../../kernel-lib/library/src/heat/wet-surface";
import { foods } from "./foods";

const food = foods.reference;

describe("crust", () => {
  test("depth and time undo each other", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 60, noNaN: true }),
        fc.double({ min: 5, max: 150, noNaN: true }),
        fc.double({ min: 101, max: 260, noNaN: true }),
        (dryingMin, coefficientWm2K, airC) => {
          const air = { coefficientWm2K, airC, crustWaterKgM3: 700 };
          const crustMm = crustDepthMm({ ...air, dryingMin });
          expect(Math.abs(crustMin({ ...air, crustMm }) / dryingMin - 1)).toBeLessThan(1e-6);
          expect(crustSurfaceC({ ...air, crustMm })).toBeLessThan(airC);
        },
      ),
    );
  });

  test("a chilled slab starts its crust when the solver says so, within 6 %", () => {
    const slab = { food, thicknessMm: 10, coefficientWm2K: 40, airC: 204, startC: 4 };
    const solved = timeWhen(simulateSlab({ ...slab, endMin: 20 }), { column: "surfaceC", value: 99.99 });
    expect(Math.abs(crustStart(slab).surfaceMin / solved - 1)).toBeLessThan(0.06);
    expect(crustStart(slab).extrapolation).toBe(true);
  });

  test("air below the front is refused", () => {
    const air = { coefficientWm2K: 40, airC: 90, crustWaterKgM3: 700 };
    expect(() => crustDepthMm({ ...air, dryingMin: 5 })).toThrow(
      "must be above the evaporating front at 100 °C, got 90",
    );
    expect(() => crustStart({ food, thicknessMm: 10, coefficientWm2K: 40, airC: 95 })).toThrow(
      "must be above the evaporating front",
    );
  });
});

describe("coreTimeClosedForm", () => {
  test("is a·L + b·L², both shares falling with the air's driving difference", () => {
    const short = coreTimeClosedForm({ food, thicknessMm: 12, coefficientWm2K: 40, airC: 190 });
    expect(short.timeMin).toBeCloseTo(short.perMm * 12 + short.perMm2 * 144, 9);
    expect(short.limitC).toBe(74);
    expect(short.caution).toContain("probe");
    const twice = coreTimeClosedForm({ food, thicknessMm: 12, coefficientWm2K: 80, airC: 190 });
    expect(twice.perMm).toBeCloseTo(short.perMm / 2, 9);
    expect(twice.perMm2).toBeCloseTo(short.perMm2, 9);
    expect(twice.extrapolation).toBe(true);
    expect(short.extrapolation).toBe(false);
  });

  test("from chilled it follows the solver within its stated worst error", () => {
    for (const thicknessMm of [6.35, 12.7, 19])
      for (const coefficientWm2K of [30, 60]) {
        const slab = { food, thicknessMm, coefficientWm2K, airC: 190, startC: 4 };
        const short = coreTimeClosedForm(slab);
        const run = simulateSlab({ ...slab, endMin: 60, stopCoreC: 74, drying: "boiling-surface" });
        const solved = timeWhen(run, { column: "coreC", value: 74 });
        expect(Math.abs(short.timeMin / solved - 1)).toBeLessThan(short.worstRelativeError);
      }
  });

  test("air that cannot heat the core is refused", () => {
    expect(() => coreTimeClosedForm({ food, thicknessMm: 10, coefficientWm2K: 40, airC: 70 })).toThrow(
      "must be above the core limit of 74 °C, got 70",
    );
  });
});

describe("freezing times", () => {
  const slab = { food, thicknessMm: 20, coefficientWm2K: 60, airC: -30, startC: 10 };

  test("inside its range a correlation is not flagged and meets the solver within 10 %", () => {
    const solved = timeWhen(simulateSlab({ ...slab, endMin: 300, stopCoreC: -10.5 }), { column: "coreC", value: -10 });
    expect(Math.abs(freezingTimePham(slab).timeMin / solved - 1)).toBeLessThan(0.1);
    expect(Math.abs(freezingTimeClelandEarle(slab).timeMin / solved - 1)).toBeLessThan(0.1);
    expect(freezingTimePham(slab).extrapolation).toBe(false);
  });

  test("outside it says which number leaves it", () => {
    const gentle = freezingTimeClelandEarle({ ...slab, thicknessMm: 8, coefficientWm2K: 8 });
    expect(gentle.extrapolation).toBe(true);
    expect(gentle.notes.join(" ")).toMatch(/Bi 0\.0\d+ is outside 0\.5 to 22/);
  });

  test("a sphere freezes in a third of the slab's time where the surface decides", () => {
    const base = {
      densityKgM3: 1050,
      latentKJkg: 210,
      freezingPointC: -1,
      airC: -20,
      coefficientWm2K: 0.01,
      frozenConductivityWmK: 1.4,
      thicknessMm: 20,
    };
    expect(freezingTimePlank({ ...base, shape: "sphere" }) / freezingTimePlank(base)).toBeCloseTo(1 / 3, 4);
  });

  test("warm freezers, thawed targets, bare bricks are refused", () => {
    expect(() => freezingTimePham({ ...slab, airC: -9 })).toThrow("the centre tends to -9 °C");
    expect(() => freezingTimePham({ ...slab, centreC: 0 })).toThrow("must be below the freezing point of -1 °C, got 0");
    expect(() => freezingTimePham({ ...slab, food: foods.withoutIce })).toThrow("must hold water that freezes");
    const base = {
      densityKgM3: 1050,
      latentKJkg: 210,
      freezingPointC: -1,
      airC: -20,
      coefficientWm2K: 9,
      frozenConductivityWmK: 1.4,
      thicknessMm: 20,
    };
    expect(() => freezingTimePlank({ ...base, shape: "brick" })).toThrow("must be given for a brick");
    expect(() => freezingTimePlank({ ...base, airC: 2 })).toThrow("must be below the freezing point of -1 °C, got 2");
    expect(() =>
      freezingFront({
        frozenConductivityWmK: 1.5,
        frozenSpecificHeatKJkgK: 2,
        thawedConductivityWmK: 0.5,
        thawedSpecificHeatKJkgK: 3.5,
        densityKgM3: 1050,
        latentKJkg: 230,
        faceC: 1,
        freezingPointC: -1,
        startC: 5,
      }),
    ).toThrow("faceC must be below");
  });

  test("E falls from 1 + 1/β1 + 1/β2 as the inner resistance grows", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 8, noNaN: true }),
        fc.double({ min: 1, max: 8, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        (one, other, biot) => {
          const e = equivalentDimension({ biot, sideRatios: [one, other] });
          expect(e).toBeGreaterThanOrEqual(1);
          expect(e).toBeLessThanOrEqual(1 + 1 / one + 1 / other + 1e-9);
        },
      ),
    );
  });
});

describe("conduction", () => {
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

  test("too early for the series is refused", () => {
    expect(() => seriesSolution({ biot: 1, fourier: 1e-5 })).toThrow("semiInfiniteSolution");
    expect(() => seriesSolution({ biot: -1, fourier: 1 })).toThrow("biot must be > 0");
  });
});

describe("air", () => {
  test("water boils at sea level near 100 °C", () => {
    expect(Math.abs(saturationPressurePa(100) / 101325 - 1)).toBeLessThan(0.001);
  });
  test("moister air lets a wet surface run hotter; saturated air is refused", () => {
    expect(wetSurface({ airC: 180, vapourPa: 20000 }).surfaceC).toBeGreaterThan(wetSurface({ airC: 180 }).surfaceC);
    expect(() => wetSurface({ airC: 40, vapourPa: 9000 })).toThrow("must be below saturation at 40 °C");
    expect(radiationCoefficient({ wallC: 200, surfaceC: 20, emissivity: 0 })).toBe(0);
  });
});
