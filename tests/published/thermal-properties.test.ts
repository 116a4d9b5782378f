import { describe, expect, test } from "vitest";
import { choiOkos, type FoodComponent } from "../../kernel-lib/library/src/food/choi-okos";
import { mixDensity } from "../../kernel-lib/library/src/food/mix-density";
import reference from "./thermal-properties/reference.json";

type Masses = { water: number; protein: number; fat: number; carbohydrate: number; fibre: number; ash: number };

const compositionOf = (masses: Masses) => ({
  waterFraction: masses.water,
  proteinFraction: masses.protein,
  fatFraction: masses.fat,
  carbohydrateFraction: masses.carbohydrate,
  fibreFraction: masses.fibre,
  ashFraction: masses.ash,
});

/** Relative distance, to compare with the tolerance that reference.json states (1e-9). */
const off = (value: number, certified: number): number => Math.abs(value / certified - 1);

describe("Choi & Okos components (ASHRAE Handbook - Refrigeration 2006, chapter 9)", () => {
  for (const [component, temperatures] of Object.entries(reference.components))
    for (const [temperature, certified] of Object.entries(temperatures))
      test(`${component} at ${temperature} °C`, () => {
        const found = choiOkos(component as FoodComponent, Number(temperature));
        expect(off(found.conductivityWmK, certified.conductivityWmK)).toBeLessThan(1e-9);
        expect(off(found.densityKgM3, certified.densityKgM3)).toBeLessThan(1e-9);
        expect(off(found.specificHeatKJkgK, certified.specificHeatKJkgK)).toBeLessThan(1e-9);
      });
});

describe("density of mixes", () => {
  for (const [name, mix] of Object.entries(reference.mixtures))
    for (const [temperature, certified] of Object.entries(mix.at))
      test(`${name} at ${temperature} °C`, () => {
        const found = mixDensity(compositionOf(mix.masses), { temperatureC: Number(temperature) });
        expect(off(found, certified.densityKgM3)).toBeLessThan(1e-9);
      });

  test("lean at −18 °C with its ice", () => {
    const { iceFraction, densityKgM3 } = reference.frozenAtMinus18.lean;
    const found = mixDensity(compositionOf(reference.mixtures.lean.masses), { temperatureC: -18, iceFraction });
    expect(off(found, densityKgM3)).toBeLessThan(1e-9);
  });
});
