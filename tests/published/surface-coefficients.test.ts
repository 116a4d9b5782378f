import { describe, test } from "vitest";
import { flatPlateCoefficient } from "../../kernel-lib/library/src/heat/coefficient/air-coefficient";
import { metalBlockCoefficient } from "../../kernel-lib/library/src/heat/coefficient/metal-block-coefficient";
import { radiationCoefficient } from "../../kernel-lib/library/src/heat/coefficient/radiation-coefficient";
import { vapourFlux, wetSurface } from "../../kernel-lib/library/src/heat/coefficient/wet-surface";
import { crustDepthMm, crustMin, crustSurfaceC } from "../../kernel-lib/library/src/heat/formulas/crust-depth";
import { comparison } from "./comparison";
import reference from "./surface-coefficients/reference.json";

const coefficient = comparison({
  page: "heating-and-freezing",
  what: "surface coefficients, wet-bulb temperatures and crust depths",
  against: "the formulas, evaluated apart",
  source:
    "Incropera & DeWitt, Fundamentals of Heat and Mass Transfer (Pohlhausen 1921); Buck A. (1996); Farkas, Singh & Rumsey (1996), Journal of Food Engineering 29:211-226",
});

describe("coefficients", () => {
  test("metal block", () => {
    const { coefficientWm2K, startC, temperatureC, ...block } = reference.block;
    const readings = Object.entries(temperatureC).map(([seconds, reading]) => ({
      timeMin: Number(seconds) / 60,
      temperatureC: reading,
    }));
    const found = metalBlockCoefficient({ ...block, readings: [{ timeMin: 0, temperatureC: startC }, ...readings] });
    coefficient.relative(found.coefficientWm2K, coefficientWm2K, 1e-6);
  });

  test("flat plate", () => {
    const air = { kinematicViscosityM2s: 2.84e-5, conductivityWmK: 0.0351, prandtl: 0.69 };
    const found = flatPlateCoefficient({ airSpeedMs: 5, lengthMm: 40, air });
    coefficient.relative(found.flowNumber, reference.flatPlate.reynolds, 1e-6);
    coefficient.relative(found.coefficientWm2K, reference.flatPlate.coefficientWm2K, 1e-6);
  });

  for (const { coefficientWm2K, ...walls } of reference.radiation)
    test(`radiation ${walls.wallC} to ${walls.surfaceC} °C`, () => {
      coefficient.relative(radiationCoefficient(walls), coefficientWm2K, 1e-6);
    });
});

describe("wet surface", () => {
  for (const { surfaceC, ...air } of reference.wetBulb)
    test(`${air.airC} °C, ${air.vapourPa} Pa`, () => {
      coefficient.relative(wetSurface(air).surfaceC, surfaceC, 1e-6);
    });

  test("with radiation, and the flux at 60 °C", () => {
    const { airC, vapourPa, ratio, surfaceC } = reference.wetBulbWithRadiation;
    const found = wetSurface({ airC, vapourPa, convectionWm2K: 40, radiationWm2K: 40 * ratio });
    coefficient.relative(found.surfaceC, surfaceC, 1e-6);
    coefficient.relative(vapourFlux(60, 1200, 40), reference.fluxAt60, 1e-6);
  });
});

describe("crust", () => {
  const air = { coefficientWm2K: 40, airC: 204, crustWaterKgM3: 771.75 };
  for (const { seconds, mm } of reference.crustMm)
    test(`depth at ${seconds} s`, () => {
      coefficient.relative(crustDepthMm({ ...air, dryingMin: seconds / 60 }), mm, 1e-6);
    });
  for (const { mm, seconds, surfaceC } of reference.crustSeconds)
    test(`time to ${mm} mm and its surface`, () => {
      coefficient.relative(crustMin({ ...air, crustMm: mm }) * 60, seconds, 1e-6);
      coefficient.relative(crustSurfaceC({ ...air, crustMm: mm }), surfaceC, 1e-6);
    });
});
