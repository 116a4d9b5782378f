import { describe, test } from "vitest";
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
import { comparison } from "./comparison";
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

const handbook = (what: string, against: string, source: string) =>
  comparison({ page: "heating-and-freezing", what, against, source });
const ASHRAE = "ASHRAE Handbook - Refrigeration (2006), chapter 9";
const components = handbook(
  "conductivity, density and specific heat of the components",
  "Choi & Okos' coefficients, evaluated apart",
  `Choi Y., Okos M.R. (1986); ${ASHRAE}`,
);
const mixes = handbook(
  "density and conductivity of mixes, thawed and frozen",
  "the handbook's mixing laws, evaluated apart",
  ASHRAE,
);
const frozenFood = handbook(
  "ice and enthalpy of frozen food",
  "Chen's, Tchigeov's and Levy's formulas, evaluated apart",
  "Chen C.S. (1985), Journal of Food Science 50:1163-1166; Tchigeov G. (1979); Levy F.L. (1981), International Journal of Refrigeration 4:223",
);
const heat = handbook(
  "heat from −18 to 25 °C of the library's closed curve",
  "Chen's enthalpy",
  "Chen C.S. (1985), Journal of Food Science 50:1163-1166",
);
const freezing = handbook("initial freezing points", "printed freezing points, from memory", `${ASHRAE}, table 3`);
const brines = handbook(
  "freezing points of brines of 1 and 5 %",
  "printed freezing points, from memory",
  "CRC Handbook of Chemistry and Physics",
);

describe("Choi & Okos components (ASHRAE Handbook - Refrigeration 2006, chapter 9)", () => {
  for (const [component, temperatures] of Object.entries(reference.components))
    for (const [temperature, certified] of Object.entries(temperatures))
      test(`${component} at ${temperature} °C`, () => {
        const found = choiOkos(component as FoodComponent, Number(temperature));
        components.relative(found.conductivityWmK, certified.conductivityWmK, 1e-9);
        components.relative(found.densityKgM3, certified.densityKgM3, 1e-9);
        components.relative(found.specificHeatKJkgK, certified.specificHeatKJkgK, 1e-9);
      });
});

describe("density of mixes", () => {
  for (const [name, mix] of Object.entries(reference.mixtures))
    for (const [temperature, certified] of Object.entries(mix.at))
      test(`${name} at ${temperature} °C`, () => {
        const found = mixDensity(compositionOf(mix.masses), { temperatureC: Number(temperature) });
        mixes.relative(found, certified.densityKgM3, 1e-9);
      });

  test("lean at −18 °C with its ice", () => {
    const { iceFraction, densityKgM3 } = reference.frozenAtMinus18.lean;
    const found = mixDensity(compositionOf(reference.mixtures.lean.masses), { temperatureC: -18, iceFraction });
    mixes.relative(found, densityKgM3, 1e-9);
  });
});

describe("conductivity of mixes", () => {
  for (const [name, mix] of Object.entries(reference.mixtures))
    for (const [temperature, certified] of Object.entries(mix.at))
      for (const model of ["parallel", "series", "geometric"] as const)
        test(`${name}, ${model}, ${temperature} °C`, () => {
          const found = mixConductivity(compositionOf(mix.masses), { temperatureC: Number(temperature), model });
          mixes.relative(found, certified[model], 1e-9);
        });

  for (const { k1, k2, r1, k } of reference.levy)
    test(`Levy, ${k1} in ${k2}`, () => {
      const found = conductivityLevy({ continuousWmK: k2, dispersedWmK: k1, dispersedVolumeFraction: r1 });
      mixes.relative(found, k, 1e-9);
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

    test(`${name}: ice`, () => mixes.relative(iceFraction(model, -18), certified.iceFraction, 1e-9));

    test(`${name}: conductivity of the mix and of the curve through it`, () => {
      const ice = { temperatureC: -18, iceFraction: certified.iceFraction };
      mixes.relative(mixConductivity(composition, { ...ice, model: "parallel" }), certified.parallel, 1e-9);
      mixes.relative(mixConductivity(composition, { ...ice, model: "series" }), certified.series, 1e-9);
      mixes.relative(conductivityAt(model, -18), certified.parallel, 1e-9);
    });

    test(`${name}: specific heat of the frozen curve`, () => {
      // The reference holds the ice of −18 °C only; the model's constant is for all freezable water frozen.
      const unfrozen = model.latentKJkg / 333.6 - certified.iceFraction;
      const more = unfrozen * (choiOkos("ice", -18).specificHeatKJkgK - choiOkos("water", -18).specificHeatKJkgK);
      mixes.relative(model.frozenSpecificHeatKJkgK, certified.specificHeatKJkgK + more, 1e-9);
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
      frozenFood.relative(iceFraction(model, temperatureC), certified.ice, 1e-9);
      frozenFood.relative(chen(temperatureC), certified.enthalpyChenKJkg, 1e-9);
      const tchigeov = iceFractionTchigeov({ waterFraction, freezingPointC, temperatureC });
      frozenFood.relative(tchigeov, certified.iceTchigeov, 1e-9);
    });

  test("thawed", () => {
    frozenFood.relative(chen(freezingPointC), reference.iceAndEnthalpy.enthalpyAtFreezingPoint, 1e-9);
    frozenFood.relative(chen(5), thawed["5"], 1e-9);
    frozenFood.relative(chen(25), thawed["25"], 1e-9);
  });

  test("the worked carcass: ice at −20 °C, heat to remove", () => {
    const { minus20, atFreezingPoint, plus10, ...carcass } = reference.chenCarcass;
    const held = { freezableWaterFraction: 0.58 - carcass.boundWaterFraction, ...carcass };
    frozenFood.relative(enthalpyChen({ ...held, temperatureC: -20 }), minus20, 1e-9);
    frozenFood.relative(enthalpyChen({ ...held, temperatureC: -1.7 }), atFreezingPoint, 1e-9);
    frozenFood.relative(enthalpyChen({ ...held, temperatureC: 10 }), plus10, 1e-9);
    const { ice, ...input } = reference.tchigeovCarcass;
    frozenFood.relative(iceFractionTchigeov(input), ice, 1e-9);
  });

  test("our closed curve and Chen's agree on the heat between −18 and 25 °C within 3 %", () => {
    const ours = enthalpyAt(model, 25) - enthalpyAt(model, -18);
    heat.relative(ours, chen(25) - chen(-18), 0.03);
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
      freezing.absolute(found.freezingPointC, published, 2 * found.standardErrorK, "K");
    });

  test("brines (CRC Handbook of Chemistry and Physics, from memory: 1 % −0.59 °C, 5 % −3.05 °C)", () => {
    const brine = (salt: number) =>
      freezingPoint(compositionOf({ water: 1 - salt, protein: 0, fat: 0, carbohydrate: 0, fibre: 0, ash: salt }), {
        saltFraction: salt,
      }).freezingPointC;
    brines.absolute(brine(0.01), -0.59, 0.06, "K");
    brines.absolute(brine(0.05), -3.05, 0.25, "K");
  });
});
