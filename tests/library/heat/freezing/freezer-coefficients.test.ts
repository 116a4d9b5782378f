import { describe, expect, test } from "vitest";
import {
  flatPlateCoefficient,
  naturalConvectionCoefficient,
} from "../../../../kernel-lib/library/src/heat/coefficient/air-coefficient";
import { airProperties } from "../../../../kernel-lib/library/src/heat/coefficient/air-properties";
import { radiationCoefficient } from "../../../../kernel-lib/library/src/heat/coefficient/radiation-coefficient";
import { freezerCoefficients } from "../../../../kernel-lib/library/src/heat/freezing/freezer-coefficients";

describe("freezerCoefficients", () => {
  test("a fan helps; a lid, a shelf and a tight stack hinder", () => {
    const open = freezerCoefficients({ airC: -18 });
    expect(freezerCoefficients({ airC: -18, airflow: "fan" }).coefficientWm2K).toBeGreaterThan(open.coefficientWm2K);
    expect(freezerCoefficients({ airC: -18, lidGapMm: 12 }).coefficientWm2K).toBeLessThan(open.coefficientWm2K / 2);
    expect(freezerCoefficients({ airC: -18, restsOn: "shelf" }).coefficientBelowWm2K).toBeLessThan(
      open.coefficientBelowWm2K,
    );
    expect(freezerCoefficients({ airC: -18, restsOn: "insulated" }).coefficientBelowWm2K).toBe(0);
    const tight = freezerCoefficients({ airC: -18, stackGapMm: 10 }).coefficientWm2K;
    const loose = freezerCoefficients({ airC: -18, stackGapMm: 60 }).coefficientWm2K;
    expect(tight).toBeLessThan(loose);
    expect(loose).toBeLessThan(open.coefficientWm2K);
  });

  test("a warm freezer and unknown words are refused", () => {
    expect(() => freezerCoefficients({ airC: 4 })).toThrow("airC must be between -80 and -2 °C, got 4");
    expect(() => freezerCoefficients({ airC: -18, airflow: "wind" as "fan" })).toThrow("airflow must be still or fan");
  });

  test("a lid puts its air gap, by conduction and radiation, in series with the open face", () => {
    const open = freezerCoefficients({ airC: -18 }).coefficientWm2K;
    const lidded = freezerCoefficients({ airC: -18, lidGapMm: 12 }).coefficientWm2K;
    // the surface counts as freezing still, at -3 °C; the lid as 3 K below it
    const inside =
      airProperties(-3).conductivityWmK / 0.012 + radiationCoefficient({ wallC: -6, surfaceC: -3, emissivity: 0.8 });
    expect(1 / lidded).toBeCloseTo(1 / open + 1 / inside, 10);
  });

  test("in a stack no radiation comes in, and the draught falls with the gap", () => {
    const still = naturalConvectionCoefficient({ surfaceC: -3, airC: -18, lengthMm: 86, face: "level-free" });
    const stacked = freezerCoefficients({ airC: -18, stackGapMm: 30 });
    expect(stacked.coefficientWm2K).toBeCloseTo((30 / 50) * still.coefficientWm2K, 10);
    const alone = freezerCoefficients({ airC: -18 });
    expect(alone.coefficientWm2K - still.coefficientWm2K).toBeCloseTo(
      radiationCoefficient({ wallC: -18, surfaceC: -3, emissivity: 0.9 }),
      10,
    );
  });

  test("a fan blows along a plate four times as long as its area over its perimeter", () => {
    const blown = flatPlateCoefficient({ airSpeedMs: 3, lengthMm: 4 * 70, filmC: -10.5 }).coefficientWm2K;
    const fan = freezerCoefficients({
      airC: -18,
      airflow: "fan",
      airSpeedMs: 3,
      areaOverPerimeterMm: 70,
      stackGapMm: 20,
    });
    expect(fan.coefficientWm2K).toBeCloseTo(blown / 2, 10);
  });
});
