import { expect, test } from "vitest";
import {
  checkThermalModel,
  thermalProperties,
} from "../../../../kernel-lib/library/src/food/thermal/thermal-properties";
import { coreTime } from "../../../../kernel-lib/library/src/heat/solver/core-time";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { foods } from "../../heat/foods";

const formed = {
  waterFraction: 0.62,
  proteinFraction: 0.17,
  fatFraction: 0.09,
  carbohydrateFraction: 0.095,
  fibreFraction: 0.007,
  ashFraction: 0.018,
};

test("the chosen conductivity lies between its bounds", () => {
  for (const airFraction of [0, 0.1]) {
    const found = thermalProperties(formed, { airFraction });
    const [low, high] = found.thawedConductivityRangeWmK;
    expect(found.thawedConductivityWmK).toBeGreaterThan(low);
    expect(found.thawedConductivityWmK).toBeLessThan(high);
    expect(found.frozenConductivityWmK).toBeGreaterThan(found.frozenConductivityRangeWmK[0]);
    expect(found.frozenConductivityWmK).toBeLessThan(found.frozenConductivityRangeWmK[1]);
  }
});

test("an estimated freezing point is said to be one, a given one is not", () => {
  expect(thermalProperties(formed).notes[0]).toMatch(/^Freezing point -\d\.\d °C ± \d\.\d K: ideal solution/);
  expect(thermalProperties(formed, { freezingPointC: -2 }).notes).toEqual([]);
});

test("a dry crumb still has a model, marked as hardly freezing", () => {
  const crumb = { ...formed, waterFraction: 0.06, carbohydrateFraction: 0.655 };
  const found = thermalProperties(crumb);
  expect(found.latentKJkg).toBe(0);
  expect(found.notes.join(" ")).toContain("hardly freezes");
});

test("absurd constants are named", () => {
  expect(() => thermalProperties(formed, { freezingPointC: 1 })).toThrow("freezingPointC must be below 0 °C");
  expect(() => checkThermalModel({ ...foods.reference, densityKgM3: -1 }, "slab")).toThrow("slab: densityKgM3 must be");
  expect(() => checkThermalModel({ ...foods.reference, thawedConductivityWmK: 49 }, "slab")).toThrow(
    "slab: thawedConductivityWmK must be between 0.01 and 5 W/(m·K), got 49",
  );
});

test("every formula of the kitchen has thermal properties of food, and a core time", () => {
  const kitchen = loadKitchen();
  expect(kitchen.variants.length).toBeGreaterThan(0);
  for (const { composition, formula } of kitchen.variants) {
    const model = checkThermalModel(thermalProperties(composition, { airFraction: formula.airFraction }), formula.id);
    expect(model.freezingPointC).toBeLessThan(-0.5);
    expect(model.freezingPointC).toBeGreaterThan(-6);
    expect(model.thawedConductivityWmK).toBeGreaterThan(0.3);
    expect(model.thawedConductivityWmK).toBeLessThan(0.6);
    expect(model.frozenConductivityWmK).toBeGreaterThan(2 * model.thawedConductivityWmK * 0.9);
    const core = coreTime({ food: model, thicknessMm: 10, airC: 200, coefficientWm2K: 40 });
    expect(core.timeMin).toBeGreaterThan(4);
    expect(core.timeMin).toBeLessThan(12);
  }
});
