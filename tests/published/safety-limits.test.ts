import { describe, expect, it } from "vitest";
import { coreLimit } from "../../kernel-lib/library/src/safety/core-limit";

/**
 * US consumer minimum internal temperatures, foodsafety.gov (public copies read): poultry 165 °F, ground meats 160,
 * egg dishes 160, leftovers and casseroles 165. FDA Food Code 3-401.11: poultry and stuffed food 165 °F (74 °C),
 * comminuted fish 155 °F (68 °C; its 17 s from memory, an older text with 15 s was read). 3-403.11: reheating 165 °F.
 */
describe("core limits against the published minima", () => {
  it.each([
    ["poultry", 165],
    ["groundMeat", 160],
    ["egg", 160],
    ["fish", 155],
    ["plant", 165],
    ["readyToEat", 165],
  ] as const)("%s has %d °F", (foodClass, limitF) => {
    const limit = coreLimit(foodClass);
    expect(limit.limitF).toBe(limitF);
    expect(limit.limitC).toBeGreaterThanOrEqual((limitF - 32) / 1.8);
  });

  it("does not take an intact cut's 145 °F for pieces pressed from it", () => {
    expect(coreLimit("wholeMeat").limitF).toBe(160);
    expect(coreLimit("wholeMeat").source).toContain("145 °F");
  });
});
