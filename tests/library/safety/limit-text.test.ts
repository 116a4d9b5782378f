import { describe, expect, it } from "vitest";
import type { FoodClass } from "../../../kernel-lib/library/src/food/formula/formula";
import { coreLimit } from "../../../kernel-lib/library/src/safety/core-limit";
import { limitCaution, limitText } from "../../../kernel-lib/library/src/safety/limit-text";

const CLASSES: readonly FoodClass[] = ["poultry", "groundMeat", "wholeMeat", "fish", "egg", "plant", "readyToEat"];

describe("limitText", () => {
  it.each(CLASSES)("prints the source's own number in each unit: %s", (foodClass) => {
    const limit = coreLimit(foodClass);
    expect(limitText(limit, "us")).toBe(`${limit.limitF} °F`);
    expect(limitText(limit, "metric")).toBe(`${limit.limitC} °C`);
  });
});

describe("limitCaution", () => {
  it.each(CLASSES)("keeps every word of the caution, the kitchen's unit first: %s", (foodClass) => {
    const limit = coreLimit(foodClass);
    const words = (text: string): string[] => text.match(/[\w.]+/g)!.sort();
    expect(words(limitCaution(limit, "us"))).toEqual(words(limit.caution));
    expect(limitCaution(limit, "us")).toContain(`at least ${limit.limitF} °F (${limit.limitC} °C)`);
    expect(limitCaution(limit, "metric")).toBe(limit.caution);
  });
});
