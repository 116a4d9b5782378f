import { describe, expect, test } from "vitest";
import { radiationCoefficient } from "../../../../kernel-lib/library/src/heat/coefficient/radiation-coefficient";
import { saturationPressurePa, wetSurface } from "../../../../kernel-lib/library/src/heat/coefficient/wet-surface";

describe("wetSurface", () => {
  test("water boils at sea level near 100 °C", () => {
    expect(Math.abs(saturationPressurePa(100) / 101325 - 1)).toBeLessThan(0.001);
  });

  test("moister air lets a wet surface run hotter; saturated air is refused", () => {
    expect(wetSurface({ airC: 180, vapourPa: 20000 }).surfaceC).toBeGreaterThan(wetSurface({ airC: 180 }).surfaceC);
    expect(() => wetSurface({ airC: 40, vapourPa: 9000 })).toThrow("must be below saturation at 40 °C");
    expect(radiationCoefficient({ wallC: 200, surfaceC: 20, emissivity: 0 })).toBe(0);
  });
});
