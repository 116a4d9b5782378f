import { expect, test } from "vitest";
import {
  flatPlateCoefficient,
  naturalConvectionCoefficient,
} from "../../../../kernel-lib/library/src/heat/coefficient/air-coefficient";
import { airProperties } from "../../../../kernel-lib/library/src/heat/coefficient/air-properties";

test("dry air agrees with the US Standard Atmosphere 1976 at 15 °C, and with Incropera & DeWitt's table A.4 (both from memory)", () => {
  const standard = airProperties(15);
  expect(Math.abs(standard.kinematicViscosityM2s / 1.4607e-5 - 1)).toBeLessThan(0.002);
  expect(Math.abs(standard.conductivityWmK / 0.025326 - 1)).toBeLessThan(0.002);
  // the table is for 1 bar, 1.3 % thinner air
  const hot = airProperties(176.85);
  expect(Math.abs(hot.kinematicViscosityM2s / (32.39e-6 / 1.01325) - 1)).toBeLessThan(0.02);
  expect(Math.abs(hot.conductivityWmK / 0.0373 - 1)).toBeLessThan(0.02);
  expect(Math.abs(hot.prandtl / 0.686 - 1)).toBeLessThan(0.03);
});

test("still air gives a few W/(m²·K), a trapped face half of a free one", () => {
  const pan = { surfaceC: 2, airC: -18, lengthMm: 86 };
  const free = naturalConvectionCoefficient({ ...pan, face: "level-free" });
  expect(free.coefficientWm2K).toBeGreaterThan(3);
  expect(free.coefficientWm2K).toBeLessThan(8);
  expect(free.extrapolation).toBe(false);
  const trapped = naturalConvectionCoefficient({ ...pan, face: "level-trapped" });
  expect(trapped.coefficientWm2K / free.coefficientWm2K).toBeCloseTo(0.5, 6);
  const upright = naturalConvectionCoefficient({ ...pan, face: "upright" });
  expect(upright.coefficientWm2K).toBeGreaterThan(3);
});

test("turbulent plates are flagged, missing air is named", () => {
  expect(flatPlateCoefficient({ airSpeedMs: 30, lengthMm: 500, filmC: 20 }).extrapolation).toBe(true);
  expect(() => flatPlateCoefficient({ airSpeedMs: 3, lengthMm: 40 })).toThrow(
    "flatPlateCoefficient: filmC must be given",
  );
  expect(() => naturalConvectionCoefficient({ surfaceC: 5, airC: 5, lengthMm: 80, face: "upright" })).toThrow(
    "must differ from the air",
  );
});

test("the Rayleigh number is gβΔT·L³·Pr/ν² at the film's temperature, the same for warm and cold faces", () => {
  for (const [surfaceC, airC] of [
    [2, -18],
    [-18, 2],
    [150, 25],
  ]) {
    const film = (surfaceC + airC) / 2;
    const { kinematicViscosityM2s, prandtl, conductivityWmK } = airProperties(film);
    const rayleigh =
      ((9.80665 / (film + 273.15)) * Math.abs(surfaceC - airC) * 0.086 ** 3 * prandtl) / kinematicViscosityM2s ** 2;
    const found = naturalConvectionCoefficient({ surfaceC, airC, lengthMm: 86, face: "level-free" });
    expect(found.flowNumber / rayleigh).toBeCloseTo(1, 10);
    expect(found.coefficientWm2K).toBeCloseTo((0.54 * rayleigh ** 0.25 * conductivityWmK) / 0.086, 8);
  }
});

test("a level face beyond Rayleigh numbers of 1e4 to 1e11 is flagged, an upright one beyond 1e9", () => {
  const at = (lengthMm: number, face: "level-free" | "upright") =>
    naturalConvectionCoefficient({ surfaceC: 200, airC: 20, lengthMm, face });
  const level = [3, 86, 4000].map((lengthMm) => at(lengthMm, "level-free"));
  expect(level.map((one) => one.extrapolation)).toEqual([true, false, true]);
  expect(level[2].flowNumber).toBeGreaterThan(1e11);
  expect(at(1000, "upright").extrapolation).toBe(true);
  expect(at(1000, "level-free").extrapolation).toBe(false);
});
