// Every object answers to `constructor`, `toString` and `__proto__`: no table may take them for names of its own.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ownValue } from "../../../kernel-lib/library/src/check/own-value";
import { fitCurve } from "../../../kernel-lib/library/src/fit/curve/fit-curve";
import { fitLinear } from "../../../kernel-lib/library/src/fit/curve/fit-linear";
import { fitRobustCurve } from "../../../kernel-lib/library/src/fit/curve/fit-robust-curve";
import { fitSlabTime } from "../../../kernel-lib/library/src/fit/curve/fit-slab-time";
import { predictLinear } from "../../../kernel-lib/library/src/fit/curve/predict-linear";
import { curveModel } from "../../../kernel-lib/library/src/fit/models/curve-model";
import { curves } from "../../../kernel-lib/library/src/fit/models/curves";
import { fitCensoredTimes } from "../../../kernel-lib/library/src/fit/outcomes/fit-censored-times";
import { formulaTotals } from "../../../kernel-lib/library/src/food/formula/formula-totals";
import { gramsOf } from "../../../kernel-lib/library/src/food/formula/grams-of";
import { importFoods } from "../../../kernel-lib/library/src/food/ingredient/import-foods";
import { ingredientOf } from "../../../kernel-lib/library/src/food/ingredient/ingredient-of";
import { choiOkos } from "../../../kernel-lib/library/src/food/thermal/choi-okos";
import { seriesSolution } from "../../../kernel-lib/library/src/heat/formulas/series-solution";
import { seriesTerms } from "../../../kernel-lib/library/src/heat/formulas/series-terms";
import { timeWhen, valueAt } from "../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { pieceMacros } from "../../../kernel-lib/library/src/macros/piece-macros";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { panPreset } from "../../../kernel-lib/library/src/pan/pan-preset";
import { readPans } from "../../../kernel-lib/library/src/pan/read-pans";
import { coreLimit } from "../../../kernel-lib/library/src/safety/core-limit";
import { buildKitchen } from "../../../kernel-lib/library/src/trials/build-kitchen";
import type { KitchenFile, KitchenFiles } from "../../../kernel-lib/library/src/trials/kitchen";
import { applianceOf, panOf, trialOf, variantOf } from "../../../kernel-lib/library/src/trials/kitchen-lookup";
import { readTrials } from "../../../kernel-lib/library/src/trials/log/read-trials";
import { columnUnit } from "../../../kernel-lib/library/src/units/columns/column-unit";
import { convertUnit } from "../../../kernel-lib/library/src/units/convert-unit";
import { parseQuantity } from "../../../kernel-lib/library/src/units/typed/parse-quantity";
import { svgOf } from "../../../kernel-lib/library/src/views/figure/svg-of";

const NAMES = Object.getOwnPropertyNames(Object.prototype);
const kitchen = loadKitchen("data");
const times = { thicknessMm: [6, 6, 9, 9, 12, 12], timeMin: [8.9, 9.3, 11.6, 11.2, 14.3, 14.7] };
const line = { x: [1, 2, 3, 4, 5], y: [1.1, 1.9, 3.2, 3.9, 5.1] };
const run = simulateSlab({
  food: {
    densityKgM3: 1050,
    waterFraction: 0.735,
    freezingPointC: -1,
    latentKJkg: 216,
    thawedSpecificHeatKJkgK: 3.5,
    frozenSpecificHeatKJkgK: 2,
    thawedConductivityWmK: 0.49,
    frozenConductivityWmK: 1.5,
  },
  thicknessMm: 10,
  startC: 4,
  airC: 200,
  coefficientWm2K: 40,
  endMin: 2,
});

/** What takes a name from outside, and what its refusal says. */
const LOOKUPS: Readonly<Record<string, readonly [look: (name: never) => unknown, refusal: RegExp]>> = {
  coreLimit: [coreLimit, /^coreLimit: foodClass must be one of poultry/],
  choiOkos: [(name) => choiOkos(name, 20), /^choiOkos: component must be one of water/],
  fitCensoredTimes: [
    (distribution) => fitCensoredTimes({ lower: [8, 8, 10], upper: [10, 10, 12], distribution }),
    /^fitCensoredTimes: distribution must be one of/,
  ],
  fitRobustCurve: [(loss) => fitRobustCurve(curves.line, line, { loss }), /^fitRobustCurve: loss must be/],
  fitSlabTime: [(form) => fitSlabTime({ ...times, form }), /^fitSlabTime: form must be one of/],
  seriesSolution: [(shape) => seriesSolution({ shape, biot: 1, fourier: 1 }), /^seriesSolution: shape must be slab/],
  seriesTerms: [(shape) => seriesTerms(shape, 1, 1), /^seriesTerms: shape must be slab/],
  timeWhen: [(column) => timeWhen(run, { column, value: 5 }), /^timeWhen: column must be one of coreC/],
  valueAt: [(column) => valueAt(run, column, 1), /^valueAt: column must be one of coreC/],
  columnUnit: [(name) => columnUnit(`a_${name}`), /^columnUnit: heading must end in a unit/],
  convertUnit: [(from) => convertUnit({ value: 1, from, to: "g" }), /^convertUnit: from must use one of the units/],
  parseQuantity: [(name) => parseQuantity(`1 ${name}`), /^parseQuantity: text must use one of the units/],
  gramsOf: [
    (name) => gramsOf({ name: "peas", householdWeights: [{ measure: "1 cup", massG: 145, source: "" }] }, `1 ${name}`),
    /^gramsOf: amount of peas must be a mass or one of its known measures/,
  ],
  ingredientOf: [(name) => ingredientOf(kitchen.ingredients, name), /^ingredientOf: id must be one of/],
  importFoods: [
    (unit) =>
      importFoods({
        csvText: "food,protein\npeas,5",
        fileName: "x.csv",
        nameColumn: "food",
        columns: { proteinG: { column: "protein", unit } },
        carbohydrateIncludesFibre: true,
        source: "invented",
      }),
    /^x.csv row 2, protein: expected a unit that turns into proteinG/,
  ],
  panPreset: [panPreset, /^panPreset: name must be one of/],
  variantOf: [(name) => variantOf(kitchen, name), /^variantOf: variantId must be one of/],
  panOf: [(name) => panOf(kitchen, name), /^panOf: panId must be one of/],
  applianceOf: [(name) => applianceOf(kitchen, name), /^applianceOf: applianceId must be one of/],
  trialOf: [(name) => trialOf(kitchen, name), /^trialOf: trialId must be one of/],
};

describe("ownValue", () => {
  it("finds what a table holds itself, and nothing that every object has", () => {
    const table = { a: 1, constructor: 2 };
    expect([ownValue(table, "a"), ownValue(table, "constructor"), ownValue(table, "b")]).toEqual([1, 2, undefined]);
    for (const name of NAMES) expect(ownValue({}, name)).toBeUndefined();
  });
});

describe("a name that every object has", () => {
  it.each(Object.keys(LOOKUPS))("is refused by %s like any other that it does not know", (lookup) => {
    const [look, refusal] = LOOKUPS[lookup];
    for (const name of NAMES) expect(() => look(name as never), name).toThrow(refusal);
  });

  it("is no heading of a log or of a list of pans", () => {
    for (const name of NAMES) {
      for (const read of [readTrials, readPans])
        for (const heading of [name, `thickness_${name}`])
          expect(read(`${heading}\n1`, "x.csv").problems[0], heading).toMatch(
            /^x.csv row 1, column .*: expected (one of|a unit of length)/,
          );
    }
  });

  it("may be the id of anything in a kitchen, where ids allow it", () => {
    const file = (name: string): KitchenFile => ({ file: name, text: readFileSync(`data/${name}`, "utf8") });
    const swap = (one: KitchenFile): KitchenFile => ({
      ...one,
      text: one.text
        .replace(/\b(beet-lentil)(?=[",])/g, "constructor")
        .replace(/\bhalf-sheet\b/g, "toString")
        .replace(/\bsmall-basket\b/g, "valueOf")
        .replace(/\bbeets-cooked\b/g, "constructor"),
    });
    const files: KitchenFiles = {
      name: "names",
      pans: swap(file("pans.csv")),
      appliances: swap(file("appliances.csv")),
      ingredients: swap(file("ingredients.csv")),
      variants: swap({ file: "variants.csv", text: file("variants.csv").text.split("\n").slice(0, 3).join("\n") }),
      formulas: [swap(file("formulas/beet-lentil.json"))],
      trials: [swap(file("trials/beet-lentil.csv"))],
    };
    const named = buildKitchen(files);
    const variant = variantOf(named, "constructor");
    expect(variant.panId).toBe("toString");
    const plain = variantOf(kitchen, "beet-lentil");
    expect(variant.densityKgM3).toBe(plain.densityKgM3);
    const totals = formulaTotals(variant.formula, named.ingredients);
    const macros = pieceMacros({ totals, pieceG: 20 });
    const doubt = macros.tableDoubt.energyKcal ?? {};
    expect(Object.hasOwn(doubt, "constructor")).toBe(true);
    for (const share of Object.values(doubt)) expect(Number.isFinite(share)).toBe(true);
  });

  it("may be a covariate, or a field of x, without being lost", () => {
    const names = ["constructor", "__proto__", "toString"];
    for (const name of names) {
      const covariates = Object.fromEntries([[name, [1, 2, 3, 4, 5]]]);
      const fit = fitLinear({ y: [1.1, 1.9, 3.2, 3.9, 5.1], covariates });
      expect(Object.keys(fit.ranges)).toEqual([name]);
      expect(predictLinear(fit, Object.fromEntries([[name, 3]])).value).toBeCloseTo(3.04, 10);
      const model = curveModel({
        name: "by field",
        evaluate: (x: Readonly<Record<string, number>>, { a, b }) => a + b * x[name],
        start: { a: 0, b: 1 },
      });
      const x = [1, 2, 3, 4, 5].map((value) => Object.fromEntries([[name, value]]));
      expect(Object.keys(fitCurve(model, { x, y: line.y }).ranges)).toEqual([name]);
    }
  });

  it("is no marker and no dash of a figure", () => {
    for (const name of NAMES) {
      const trace = { type: "scatter", mode: "lines+markers", x: [1, 2], y: [1, 2], name: "a" };
      const drawn = { ...trace, marker: { symbol: name }, line: { dash: name } };
      const svg = svgOf({ kind: "figure", summary: "", layout: {}, data: [drawn] });
      expect(svg, name).toContain("<circle");
      expect(svg, name).not.toMatch(/function|stroke-dasharray|undefined|NaN/);
    }
  });
});
