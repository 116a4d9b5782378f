import { describe, expect, it } from "vitest";
import { enthalpyAt, materialOf, temperatureAt } from "./moist-food";

const BARE = { airFraction: 0, freezingC: -1.7, dryWmK: 0.12, vapourKgMsPa: 5e-12, liquidM2s: 2e-10 };
// lean beef of the handbook's tables, its parts over their sum of 1.0030
const LEAN = {
  water: 0.715055,
  protein: 0.214855,
  fat: 0.06012,
  carbohydrate: 0,
  fibre: 0,
  ash: 0.00997,
};

describe("materialOf", () => {
  it("lies between the parallel and series limits of the component functions", () => {
    // Choi & Okos 1986 by scipy at 20 and 60 °C: parallel 0.504 and 0.547, series 0.399 and 0.434 W/(m·K); 1052 and 1038 kg/m³
    const parallel = materialOf(LEAN, { ...BARE, krischer: 0 });
    const series = materialOf(LEAN, { ...BARE, krischer: 1 });
    expect(parallel.thawedWmK).toBeGreaterThan(0.504);
    expect(parallel.thawedWmK).toBeLessThan(0.547);
    expect(series.thawedWmK).toBeGreaterThan(0.399);
    expect(series.thawedWmK).toBeLessThan(0.435);
    expect(parallel.densityKgM3).toBeGreaterThan(1038);
    expect(parallel.densityKgM3).toBeLessThan(1052);
    // frozen at −18 °C, parallel: 1.591 W/(m·K) with a little less bound water than ours
    expect(Math.abs(parallel.frozenWmK / 1.591 - 1)).toBeLessThan(0.06);
  });

  it("loses conductivity and density to air", () => {
    const solid = materialOf(LEAN, { ...BARE, krischer: 0.3 });
    const airy = materialOf(LEAN, { ...BARE, krischer: 0.3, airFraction: 0.2 });
    expect(airy.densityKgM3 / solid.densityKgM3).toBeCloseTo(0.8, 6);
    expect(airy.thawedWmK / solid.thawedWmK).toBeCloseTo(0.8 ** 1.3, 6);
  });
});

describe("enthalpyAt", () => {
  const food = materialOf(LEAN, { ...BARE, krischer: 0.3 });

  it.each([-30, -18, -5, -1.8, -1.7, -1, 40, 99])("is undone by temperatureAt at %d °C", (celsius) => {
    for (const water of [food.waterKgM3, 0.4 * food.waterKgM3, 0.5 * food.boundKgM3]) {
      const heat = enthalpyAt(food, water, celsius);
      expect(temperatureAt(food.solidsJm3K, food.boundKgM3, food.freezingC, water, heat)).toBeCloseTo(celsius, 6);
    }
  });

  it("takes as much heat from −18 to 5 °C as Chen's curve, to 6 %", () => {
    // Chen 1985 with water 0.715, solids 0.285, bound 0.086, freezing at −1.7 °C, by scipy: 52.90 at −18 and 297.65 kJ/kg at 5 °C
    const heat = (enthalpyAt(food, food.waterKgM3, 5) - enthalpyAt(food, food.waterKgM3, -18)) / food.densityKgM3;
    expect(Math.abs(heat / 244_750 - 1)).toBeLessThan(0.06);
  });
});
