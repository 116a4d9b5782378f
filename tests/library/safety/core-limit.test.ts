import { describe, expect, it } from "vitest";
import type { FoodClass } from "../../../kernel-lib/library/src/food/formula/formula";
import { coreLimit } from "../../../kernel-lib/library/src/safety/core-limit";

const CLASSES: FoodClass[] = ["poultry", "groundMeat", "fish", "egg", "wholeMeat", "plant", "readyToEat"];

describe("coreLimit", () => {
  it("never rounds the source's value down, and stays within half a degree of it", () => {
    for (const foodClass of CLASSES) {
      const { limitC, limitF } = coreLimit(foodClass);
      const exactC = (limitF - 32) / 1.8;
      expect(limitC).toBeGreaterThanOrEqual(exactC);
      expect(limitC - exactC).toBeLessThan(0.5);
    }
  });

  it("is strictest where nothing is stated", () => {
    const unstated = coreLimit();
    expect(unstated).toMatchObject({ foodClass: null, limitC: 74, limitF: 165, holdS: 0 });
    for (const foodClass of CLASSES) expect(coreLimit(foodClass).limitC).toBeLessThanOrEqual(unstated.limitC);
  });

  it("gives every class a source and a caution, and raw fillings theirs", () => {
    for (const foodClass of CLASSES) {
      const { source, caution } = coreLimit(foodClass);
      expect(source).toMatch(/foodsafety\.gov|Food Code/);
      expect(caution).toContain("Local food codes");
      expect(caution.includes("labelled as raw")).toBe(!["plant", "readyToEat"].includes(foodClass));
    }
  });

  it("refuses a class it does not know, naming those it does", () => {
    expect(() => coreLimit("soup" as FoodClass)).toThrow(/coreLimit: foodClass must be one of poultry, .* got "soup"/);
  });
});
