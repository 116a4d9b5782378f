import { describe, expect, test } from "vitest";
import { flatPlateCoefficient } from "../../kernel-lib/library/src/heat/coefficient/air-coefficient";
import { metalBlockCoefficient } from "../../kernel-lib/library/src/heat/coefficient/metal-block-coefficient";
import { radiationCoefficient } from "../../kernel-lib/library/src/heat/coefficient/radiation-coefficient";
import { vapourFlux, wetSurface } from "../../kernel-lib/library/src/heat/coefficient/wet-surface";
import { crustDepthMm, crustMin, crustSurfaceC } from "../../kernel-lib/library/src/heat/formulas/crust-depth";
import reference from "./surface-coefficients/reference.json";

const off = (value: number, certified: number): number => Math.abs(value / certified - 1);

describe("coefficients", () => {
  test("metal block", () => {
    const { coefficientWm2K, startC, temperatureC, ...block } = reference.block;
    const readings = Object.entries(temperatureC).map(([seconds, reading]) => ({
      timeMin: Number(seconds) / 60,
      temperatureC: reading,
    }));
    const found = metalBlockCoefficient({ ...block, readings: [{ timeMin: 0, temperatureC: startC }, ...readings] });
    expect(off(found.coefficientWm2K, coefficientWm2K)).toBeLessThan(1e-6);
  });

  test("flat plate", () => {
    const air = { kinematicViscosityM2s: 2.84e-5, conductivityWmK: 0.0351, prandtl: 0.69 };
    const found = flatPlateCoefficient({ airSpeedMs: 5, lengthMm: 40, air });
    expect(off(found.flowNumber, reference.flatPlate.reynolds)).toBeLessThan(1e-6);
    expect(off(found.coefficientWm2K, reference.flatPlate.coefficientWm2K)).toBeLessThan(1e-6);
  });

  for (const { coefficientWm2K, ...walls } of reference.radiation)
    test(`radiation ${walls.wallC} to ${walls.surfaceC} °C`, () => {
      expect(off(radiationCoefficient(walls), coefficientWm2K)).toBeLessThan(1e-6);
    });
});

describe("wet surface", () => {
  for (const { surfaceC, ...air } of reference.wetBulb)
    test(`${air.airC} °C, ${air.vapourPa} Pa`, () => {
      expect(off(wetSurface(air).surfaceC, surfaceC)).toBeLessThan(1e-6);
    });

  test("with radiation, and the flux at 60 °C", () => {
    const { airC, vapourPa, ratio, surfaceC } = reference.wetBulbWithRadiation;
    const found = wetSurface({ airC, vapourPa, convectionWm2K: 40, radiationWm2K: 40 * ratio });
    expect(off(found.surfaceC, surfaceC)).toBeLessThan(1e-6);
    expect(off(vapourFlux(60, 1200, 40), reference.fluxAt60)).toBeLessThan(1e-6);
  });
});

describe("crust", () => {
  const air = { coefficientWm2K: 40, airC: 204, crustWaterKgM3: 771.75 };
  for (const { seconds, mm } of reference.crustMm)
    test(`depth at ${seconds} s`, () => {
      expect(off(crustDepthMm({ ...air, dryingMin: seconds / 60 }), mm)).toBeLessThan(1e-6);
    });
  for (const { mm, seconds, surfaceC } of reference.crustSeconds)
    test(`time to ${mm} mm and its surface`, () => {
      expect(off(crustMin({ ...air, crustMm: mm }) * 60, seconds)).toBeLessThan(1e-6);
      expect(off(crustSurfaceC({ ...air, crustMm: mm }), surfaceC)).toBeLessThan(1e-6);
    });
});
