import { describe, expect, it } from "vitest";
import {
  drive,
  driveSlope,
  evaporationJkg,
  filmConductance,
  PRESSURE_PA,
  saturationPa,
  saturationSlope,
} from "./vapour";

describe("vapour", () => {
  it("saturates as the steam tables say", () => {
    // IAPWS-IF97: 20 °C 2339 Pa, 60 °C 19.95 kPa, 100 °C 101.42 kPa (from memory); Buck's form is within 0.2 %
    expect(saturationPa(20) / 2339).toBeCloseTo(1, 2);
    expect(saturationPa(60) / 19_950).toBeCloseTo(1, 2);
    expect(saturationPa(100) / 101_420).toBeCloseTo(1, 2);
    expect(saturationSlope(60)).toBeCloseTo((saturationPa(60.25) - saturationPa(60)) / 0.25, 6);
  });

  it("drives like its pressure in dry air, and steeply and without a jump near boiling", () => {
    expect(drive(1000) / 1000).toBeCloseTo(1.005, 3);
    const edge = 0.96 * PRESSURE_PA;
    expect(drive(edge + 1) - drive(edge - 1)).toBeCloseTo(2 * driveSlope(edge), 1);
    expect(driveSlope(2 * PRESSURE_PA)).toBeCloseTo(25, 6);
  });

  it.each([
    [160, 1200, 41.24],
    [180, 1200, 43.39],
    [180, 20_000, 64.46],
    [204, 5000, 50.91],
  ])(
    "balances a wet surface in %d °C air with %d Pa within 1.2 K of the Lewis wet bulb",
    (airC, vapourPa, wetBulbC) => {
      // h(Ta − Ts) = ṁ·Lv with Y = 0.622 p/(P − p), Lewis 0.857^(2/3), cp 1010, by scipy; ours drives by Stefan flow, the
      // logarithm of that, and so lies a little higher
      let [low, high] = [0, 99];
      for (let halving = 0; halving < 60; halving++) {
        const middle = (low + high) / 2;
        const flux = filmConductance(40) * (drive(saturationPa(middle)) - drive(vapourPa));
        if (flux * evaporationJkg(middle) > 40 * (airC - middle)) high = middle;
        else low = middle;
      }
      expect(low - wetBulbC).toBeGreaterThan(0);
      expect(low - wetBulbC).toBeLessThan(1.2);
    },
  );
});
