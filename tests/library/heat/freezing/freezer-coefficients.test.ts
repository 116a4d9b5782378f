import { describe, expect, test } from "vitest";
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
});
