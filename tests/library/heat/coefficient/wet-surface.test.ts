import { describe, expect, test } from "vitest";
import { radiationCoefficient } from "../../../../kernel-lib/library/src/heat/coefficient/radiation-coefficient";
import {
  humidity,
  humiditySlope,
  saturation,
  saturationPressurePa,
  wetSurface,
} from "../../../../kernel-lib/library/src/heat/coefficient/wet-surface";

describe("wetSurface", () => {
  test("water boils at sea level near 100 °C", () => {
    expect(Math.abs(saturationPressurePa(100) / 101325 - 1)).toBeLessThan(0.001);
  });

  test("moister air lets a wet surface run hotter; saturated air is refused", () => {
    expect(wetSurface({ airC: 180, vapourPa: 20000 }).surfaceC).toBeGreaterThan(wetSurface({ airC: 180 }).surfaceC);
    expect(() => wetSurface({ airC: 40, vapourPa: 9000 })).toThrow("must be below saturation at 40 °C");
    expect(radiationCoefficient({ wallC: 200, surfaceC: 20, emissivity: 0 })).toBe(0);
  });

  test("saturation follows the steam tables (ASHRAE Handbook, from memory) and its humidity's slope is its derivative", () => {
    for (const [temperatureC, pa] of [
      [0.01, 611.7],
      [20, 2339],
      [60, 19946],
      [90, 70182],
    ])
      expect(Math.abs(saturationPressurePa(temperatureC) / pa - 1)).toBeLessThan(0.002);
    for (const temperatureC of [5, 25, 45, 80, 95]) {
      const step = 1e-4;
      const slope =
        (humidity(saturation(temperatureC + step)) - humidity(saturation(temperatureC - step))) / (2 * step);
      expect(humiditySlope(temperatureC, saturation(temperatureC)) / slope).toBeCloseTo(1, 6);
    }
  });

  test("a wet surface spends on evaporation what the air and the walls bring", () => {
    const given = { airC: 180, convectionWm2K: 30, radiationWm2K: 12 };
    const { surfaceC, lossGm2min } = wetSurface(given);
    const brought = (30 + 12) * (180 - surfaceC);
    expect(((lossGm2min / 60000) * (2.5008e6 - 2360 * surfaceC)) / brought).toBeCloseTo(1, 9);
    expect(wetSurface({ ...given, radiationWm2K: 0 }).surfaceC).toBeLessThan(surfaceC);
  });
});
