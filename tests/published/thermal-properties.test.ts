import { describe, expect, test } from "vitest";
import { choiOkos, type FoodComponent } from "../../kernel-lib/library/src/food/thermal/choi-okos";
import { mixConductivity } from "../../kernel-lib/library/src/food/thermal/conductivity";
import { conductivityAt } from "../../kernel-lib/library/src/food/thermal/conductivity-curve";
import { conductivityLevy } from "../../kernel-lib/library/src/food/thermal/conductivity-two-phase";
import { enthalpyAt } from "../../kernel-lib/library/src/food/thermal/enthalpy";
import { enthalpyChen } from "../../kernel-lib/library/src/food/thermal/enthalpy-chen";
import { freezingPoint } from "../../kernel-lib/library/src/food/thermal/freezing-point";
import { iceFraction, iceFractionTchigeov } from "../../kernel-lib/library/src/food/thermal/ice-fraction";
import { mixDensity } from "../../kernel-lib/library/src/food/thermal/mix-density";
import { thermalProperties } from "../../kernel-lib/library/src/food/thermal/thermal-properties";
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

describe("conductivity of mixes", () => {
  for (const [name, mix] of Object.entries(reference.mixtures))
    for (const [temperature, certified] of Object.entries(mix.at))
      for (const model of ["parallel", "series", "geometric"] as const)
        test(`${name}, ${model}, ${temperature} °C`, () => {
          const found = mixConductivity(compositionOf(mix.masses), { temperatureC: Number(temperature), model });
          expect(off(found, certified[model])).toBeLessThan(1e-9);
        });

  for (const { k1, k2, r1, k } of reference.levy)
    test(`Levy, ${k1} in ${k2}`, () => {
      const found = conductivityLevy({ continuousWmK: k2, dispersedWmK: k1, dispersedVolumeFraction: r1 });
      expect(off(found, k)).toBeLessThan(1e-9);
    });
});

describe("frozen at −18 °C", () => {
  for (const name of ["lean", "formed"] as const) {
    const certified = reference.frozenAtMinus18[name];
    const composition = compositionOf(reference.mixtures[name].masses);
    const model = thermalProperties(composition, {
      freezingPointC: certified.freezingPointC,
      conductivityModel: "parallel",
    });

    test(`${name}: ice`, () => expect(off(iceFraction(model, -18), certified.iceFraction)).toBeLessThan(1e-9));

    test(`${name}: conductivity of the mix and of the curve through it`, () => {
      const ice = { temperatureC: -18, iceFraction: certified.iceFraction };
      expect(off(mixConductivity(composition, { ...ice, model: "parallel" }), certified.parallel)).toBeLessThan(1e-9);
      expect(off(mixConductivity(composition, { ...ice, model: "series" }), certified.series)).toBeLessThan(1e-9);
      expect(off(conductivityAt(model, -18), certified.parallel)).toBeLessThan(1e-9);
    });

    test(`${name}: specific heat of the frozen curve`, () => {
      // The reference holds the ice of −18 °C only; the model's constant is for all freezable water frozen.
      const unfrozen = model.latentKJkg / 333.6 - certified.iceFraction;
      const more = unfrozen * (choiOkos("ice", -18).specificHeatKJkgK - choiOkos("water", -18).specificHeatKJkgK);
      expect(off(model.frozenSpecificHeatKJkgK, certified.specificHeatKJkgK + more)).toBeLessThan(1e-9);
    });
  }
});

describe("ice and enthalpy (Chen 1985, Tchigeov 1979)", () => {
  const { waterFraction, solidsFraction, boundWaterFraction, freezingPointC, at, thawed } = reference.iceAndEnthalpy;
  const freezableWaterFraction = waterFraction - boundWaterFraction;
  const model = thermalProperties(compositionOf(reference.mixtures.lean.masses), { freezingPointC });
  const chen = (temperatureC: number): number =>
    enthalpyChen({ solidsFraction, freezableWaterFraction, freezingPointC, temperatureC });

  for (const [temperature, certified] of Object.entries(at))
    test(`${temperature} °C`, () => {
      const temperatureC = Number(temperature);
      expect(off(iceFraction(model, temperatureC), certified.ice)).toBeLessThan(1e-9);
      expect(off(chen(temperatureC), certified.enthalpyChenKJkg)).toBeLessThan(1e-9);
      const tchigeov = iceFractionTchigeov({ waterFraction, freezingPointC, temperatureC });
      expect(off(tchigeov, certified.iceTchigeov)).toBeLessThan(1e-9);
    });

  test("thawed", () => {
    expect(off(chen(freezingPointC), reference.iceAndEnthalpy.enthalpyAtFreezingPoint)).toBeLessThan(1e-9);
    expect(off(chen(5), thawed["5"])).toBeLessThan(1e-9);
    expect(off(chen(25), thawed["25"])).toBeLessThan(1e-9);
  });

  test("the worked carcass: ice at −20 °C, heat to remove", () => {
    const { minus20, atFreezingPoint, plus10, ...carcass } = reference.chenCarcass;
    const held = { freezableWaterFraction: 0.58 - carcass.boundWaterFraction, ...carcass };
    expect(off(enthalpyChen({ ...held, temperatureC: -20 }), minus20)).toBeLessThan(1e-9);
    expect(off(enthalpyChen({ ...held, temperatureC: -1.7 }), atFreezingPoint)).toBeLessThan(1e-9);
    expect(off(enthalpyChen({ ...held, temperatureC: 10 }), plus10)).toBeLessThan(1e-9);
    const { ice, ...input } = reference.tchigeovCarcass;
    expect(off(iceFractionTchigeov(input), ice)).toBeLessThan(1e-9);
  });

  test("our closed curve and Chen's agree on the heat between −18 and 25 °C within 3 %", () => {
    const ours = enthalpyAt(model, 25) - enthalpyAt(model, -18);
    expect(Math.abs(ours / (chen(25) - chen(-18)) - 1)).toBeLessThan(0.03);
  });
});

describe("initial freezing points (ASHRAE Handbook - Refrigeration, chapter 9, table 3; values from memory)", () => {
  // Compositions rounded from USDA SR28; the bound is two of the function's own standard errors.
  const cases = [
    [
      "potato",
      -0.6,
      [0.7925, 0.0205, 0.0009, 0.1539, 0.0211, 0.0111],
      { sugarFraction: 0.0082, sugarMolarMassGmol: 200 },
    ],
    [
      "apple",
      -1.1,
      [0.8556, 0.0026, 0.0017, 0.1142, 0.024, 0.0019],
      { sugarFraction: 0.1039, sugarMolarMassGmol: 190 },
    ],
    [
      "carrot",
      -1.4,
      [0.8829, 0.0093, 0.0024, 0.0678, 0.028, 0.0096],
      { sugarFraction: 0.0474, sugarMolarMassGmol: 250 },
    ],
    ["lean beef", -1.7, [0.71505, 0.21486, 0.06012, 0, 0, 0.00997], {}],
  ] as const;
  for (const [name, published, [water, protein, fat, carbohydrate, fibre, ash], dissolved] of cases)
    test(name, () => {
      const found = freezingPoint(compositionOf({ water, protein, fat, carbohydrate, fibre, ash }), dissolved);
      expect(Math.abs(found.freezingPointC - published)).toBeLessThan(2 * found.standardErrorK);
    });

  test("brines (CRC Handbook of Chemistry and Physics, from memory: 1 % −0.59 °C, 5 % −3.05 °C)", () => {
    const brine = (salt: number) =>
      freezingPoint(compositionOf({ water: 1 - salt, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: salt }), {
        saltFraction: salt,
      }).freezingPointC;
    expect(Math.abs(brine(0.01) - -0.59)).toBeLessThan(0.06);
    expect(Math.abs(brine(0.05) - -3.05)).toBeLessThan(0.25);
  });
});
