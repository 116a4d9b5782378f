import { readFileSync } from "node:fs";
import { crispPriors } from "slabwright/crisp";
import type { FoodClass } from "slabwright/food";
import { COOLING_LIMITS, coreLimit, STORAGE_LIVES } from "slabwright/safety";
import { expect, it } from "vitest";
import { LARGEST_CURVE_LOAD } from "../../kernel-lib/library/src/crisp/clocks/load-effect";
import { SAFE_CONFIDENCE, SAFE_LOADS } from "../../kernel-lib/library/src/crisp/window/load-safety";
import { FOOD_CLASSES, type LibraryFacts, modelTables } from "../../kernel-lib/reference/src/model-tables";

const tables = modelTables({ coreLimit, storageLives: STORAGE_LIVES, crispPriors } as unknown as LibraryFacts);
const rows = (name: string): string[] => tables[name].split("\n").slice(2);
const page = (name: string): string => readFileSync(`kernel-lib/reference/pages/models/${name}.md`, "utf8");

it("has the limit of every class, and of one that is not stated", () => {
  const every: Record<FoodClass, true> = {
    poultry: true,
    groundMeat: true,
    wholeMeat: true,
    fish: true,
    egg: true,
    plant: true,
    readyToEat: true,
  };
  expect([...FOOD_CLASSES].sort()).toEqual(Object.keys(every).sort());
  expect(rows("core limits").length).toBe(FOOD_CLASSES.length + 1);
  expect(rows("core limits")[0]).toMatch(/^\| poultry \| 74.°C \(165.°F\) \| no \| .+ \|$/);
  expect(rows("core limits").join("\n")).toContain("| 17 s |");
});

it("has every life and every prior with where it is from, as text", () => {
  expect(rows("storage lives").length).toBe(Object.keys(STORAGE_LIVES).length);
  const priors = rows("priors");
  expect(priors.length).toBe(crispPriors({ applianceIds: ["a"], crustWaterKgM3: 1, coated: true }).length);
  expect(priors[0]).toMatch(/\| 40 \(15.9 to 100\) W\/\(m²·K\) \| usual range of air fryers/);
  for (const row of priors) expect(row.split(/(?<!\\)\|/).length).toBe(6);
});

it("the pages' own figures are the library's", () => {
  const loads = `${100 * SAFE_LOADS} of 100 loads`;
  const confidence = `${100 * SAFE_CONFIDENCE} % confidence`;
  for (const name of ["crisp-window", "safe-core-and-lethality"]) {
    const words = page(name).replace(/\s+/g, " ");
    expect(words).toContain(loads);
    expect(words).toContain(confidence);
  }
  expect(page("thickness-and-crisp-time")).toContain(`loads up to ${LARGEST_CURVE_LOAD} of the floor`);
  const { startC, firstC, firstMin, coldC, cookedMin } = COOLING_LIMITS;
  expect(page("safe-core-and-lethality")).toContain(
    `${startC} to ${firstC} °C in ${firstMin / 60} h, to ${coldC} °C in ${cookedMin / 60} h in all`,
  );
});
