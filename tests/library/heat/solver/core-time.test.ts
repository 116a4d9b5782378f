import { expect, test } from "vitest";
import { mixDensity } from "../../../../kernel-lib/library/src/food/thermal/mix-density";
import { thermalProperties } from "../../../../kernel-lib/library/src/food/thermal/thermal-properties";
import { coreTime } from "../../../../kernel-lib/library/src/heat/solver/core-time";
import { timeWhen, valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulatePiece } from "../../../../kernel-lib/library/src/heat/solver/simulate-piece";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;

test("the core is at its limit at the time that comes back, and limit, caution and source come with it", () => {
  const found = coreTime({ food, thicknessMm: 12.7, airC: 204, coefficientWm2K: 40 });
  expect(valueAt(found.run, "coreC", found.timeMin)).toBeCloseTo(74, 6);
  expect(found.limitC).toBe(74);
  expect(found.caution).toContain("probe the coldest part");
  expect(found.source).toContain("165 °F");
  expect(found.thawedMin).toBeLessThan(found.timeMin);
  expect(found.wetSurfaceMin).toBeGreaterThan(found.timeMin);
});

test("the range of its grids holds its time, and a finer grid's, by little", () => {
  const stick = { food, thicknessMm: 14, widthMm: 27, lengthMm: 70, airC: 204, coefficientWm2K: 40 };
  const found = coreTime(stick);
  const [low, high] = found.gridRangeMin;
  expect(low).toBeLessThan(found.timeMin);
  expect(high).toBeGreaterThan(found.timeMin);
  expect(high / low).toBeLessThan(1.01);
  const fine = simulatePiece({ ...stick, startC: -18, endMin: 20, stopCoreC: 74, cells: 16 });
  const fineMin = timeWhen(fine, { column: "coreC", value: 74 });
  expect(fineMin).toBeGreaterThan(low);
  expect(fineMin).toBeLessThan(high);
});

test("thawed: 0 from thawed food, null where the limit comes before, and of a stick within 0.5 % of fine even grids", () => {
  const stick = { food, thicknessMm: 14, widthMm: 27, lengthMm: 70, airC: 204, coefficientWm2K: 40 };
  expect(coreTime({ ...stick, startC: 4 }).thawedMin).toBe(0);
  expect(coreTime({ ...stick, limitC: -3 }).thawedMin).toBeNull();
  // make.c beside tests/published/piece-reference/reference.json
  expect(Math.abs(((coreTime(stick).thawedMin as number) * 60) / 326.925 - 1)).toBeLessThan(5e-3);
});

test("what comes back is the state of the run at that time", () => {
  const found = coreTime({ food, thicknessMm: 9, airC: 204, coefficientWm2K: 60, coefficientBelowWm2K: 20 });
  for (const column of ["surfaceC", "meanC", "waterLostPercent", "crustMm"] as const)
    expect(found[column]).toBe(valueAt(found.run, column, found.timeMin));
  expect(found.run.thicknessMm).toBe(9);
  expect(found.gridRangeMin[0]).toBeLessThanOrEqual(found.timeMin * (1 - 5e-3));
  expect(found.gridRangeMin[1]).toBeGreaterThanOrEqual(found.timeMin * (1 + 2e-3));
  expect(found.thawedMin).toBe(found.run.thawedMin);
});

test("the air below may be the warm one, and air that warms up later is waited for", () => {
  const griddle = { food, thicknessMm: 8, airC: 20, coefficientWm2K: 10, airBelowC: 200, coefficientBelowWm2K: 300 };
  expect(coreTime({ ...griddle, drying: "none" }).timeMin).toBeGreaterThan(1);
  expect(() => coreTime({ ...griddle, airBelowC: 74 })).toThrow("must be above the core limit of 74 °C");
  const slow = [
    { timeMin: 0, airC: 20 },
    { timeMin: 100, airC: 20 },
    { timeMin: 101, airC: 204 },
  ];
  expect(coreTime({ food, thicknessMm: 8, airC: slow, coefficientWm2K: 40 }).timeMin).toBeGreaterThan(101);
});

test("starts and limits that cannot be are refused", () => {
  const base = { food, thicknessMm: 10, airC: 190, coefficientWm2K: 40 };
  expect(() => coreTime({ ...base, startC: 101 })).toThrow("startC must be between -60 and 100 °C, got 101");
  expect(() => coreTime({ ...base, startC: 80 })).toThrow("must be above the start of 80 °C and below 100 °C, got 74");
  expect(() => coreTime({ ...base, startC: 74 })).toThrow("must be above the start of 74 °C");
  expect(() => coreTime({ ...base, limitC: 100 })).toThrow("below 100 °C, got 100");
  expect(() => coreTime({ ...base, coefficientWm2K: 0 })).toThrow("coefficientWm2K must be > 0");
  expect(() => coreTime({ ...base, airC: 74 })).toThrow("must be above the core limit of 74 °C");
});

test("thicker, colder air and a weaker coefficient all take longer", () => {
  const base = { food, thicknessMm: 10, airC: 190, coefficientWm2K: 40 };
  const time = (change: object): number => coreTime({ ...base, ...change }).timeMin;
  expect(time({ thicknessMm: 12 })).toBeGreaterThan(time({}));
  expect(time({ airC: 170 })).toBeGreaterThan(time({}));
  expect(time({ coefficientWm2K: 30 })).toBeGreaterThan(time({}));
  expect(time({ startC: 4 })).toBeLessThan(time({}));
  expect(time({ limitC: 82 })).toBeGreaterThan(time({}));
});

test("a target out of reach is said, with the temperature that the core tends to", () => {
  const base = { food, thicknessMm: 12.7, coefficientWm2K: 40 };
  expect(() => coreTime({ ...base, airC: 60 })).toThrow(
    "must be above the core limit of 74 °C; the core tends to 60 °C",
  );
  const off = [
    { timeMin: 0, airC: 204 },
    { timeMin: 3, airC: 204 },
    { timeMin: 3, airC: 30 },
  ];
  expect(() => coreTime({ ...base, airC: off })).toThrow(/the core got to \d\d\.\d °C/);
  expect(() => coreTime({ ...base, airC: 204, limitC: 120 })).toThrow("below 100 °C, got 120");
});

test("a cooked, breaded ground-poultry stick is hot from frozen in about 5 to 7 min at 204 °C (common practice, no source)", () => {
  // about half water, as frozen breaded poultry pieces in USDA SR28
  const stick = thermalProperties({
    waterFraction: 0.5,
    proteinFraction: 0.15,
    fatFraction: 0.18,
    carbohydrateFraction: 0.14,
    fibreFraction: 0.01,
    ashFraction: 0.02,
  });
  // moving air of an air fryer: the upper half of the usual 40 to 80 W/(m²·K) (from memory)
  for (const coefficientWm2K of [60, 80]) {
    const found = coreTime({ food: stick, thicknessMm: 14, widthMm: 27, lengthMm: 70, airC: 204, coefficientWm2K });
    expect(found.body).toBe("piece");
    expect(found.timeMin).toBeGreaterThan(5);
    expect(found.timeMin).toBeLessThan(7);
  }
});

test("a slab spread at 1.2 g/cm² is near 11 mm, not a quarter inch, and is crisp but not dry after 20 min at 204 °C (common practice, no source)", () => {
  const masa = {
    waterFraction: 0.68,
    proteinFraction: 0.05,
    fatFraction: 0.03,
    carbohydrateFraction: 0.19,
    fibreFraction: 0.035,
    ashFraction: 0.015,
  };
  // 1.2 g/cm² is 12 kg/m²; 0 to 15 % of air covers weighed mixes, a quarter inch would need a mix half again as dense
  const thicknessMm = (12 / mixDensity(masa)) * 1000;
  expect(thicknessMm).toBeGreaterThan(10.5);
  expect(thicknessMm).toBeLessThan(11.5);
  expect(1 - 12 / 0.00635 / mixDensity(masa)).toBeLessThan(-0.6);
  const run = (thickness: number) =>
    simulateSlab({
      food: thermalProperties(masa),
      thicknessMm: thickness,
      startC: -18,
      airC: 204,
      coefficientWm2K: 40,
      endMin: 20,
    });
  const right = run(thicknessMm);
  expect(timeWhen(right, { column: "coreC", value: 74 })).toBeLessThan(12);
  expect(valueAt(right, "crustMm", 20)).toBeGreaterThan(0.5);
  expect(valueAt(right, "waterLostPercent", 20)).toBeLessThan(25);
  expect(valueAt(run(6.35), "waterLostPercent", 20)).toBeGreaterThan(30);
});
