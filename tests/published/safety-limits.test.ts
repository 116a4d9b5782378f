import { describe, expect, it } from "vitest";
import { COOLING_LIMITS } from "../../kernel-lib/library/src/safety/cold/cooling-check";
import { coreLimit } from "../../kernel-lib/library/src/safety/core-limit";
import { comparison } from "./comparison";

const limits = comparison({
  page: "safe-core-and-lethality",
  what: "core limits of `coreLimit` in °F, and their hold",
  against: "the published minima",
  source: "foodsafety.gov, safe minimum internal temperatures; FDA Food Code, 3-401.11, 3-403.11 and 3-501.14",
});
const cooling = comparison({
  page: "safe-core-and-lethality",
  what: "limits of `coolingCheck`",
  against: "the published two-stage limit",
  source: "FDA Food Code, 3-501.14",
});

/**
 * US consumer minimum internal temperatures, foodsafety.gov (public copies read): poultry 165 °F, ground meats 160,
 * egg dishes 160, leftovers and casseroles 165. FDA Food Code 3-401.11: poultry and stuffed food 165 °F (74 °C),
 * comminuted fish 155 °F for 17 s (paragraph (A)(2), read as Florida's inspectors quote it, violation 03C-06-5; editions
 * before 2017 have 15 s), the same for raw eggs that are pooled. 3-403.11: reheating 165 °F (from memory). 3-501.14: 57 to
 * 21 °C in 2 h, to 5 °C in 6 h in all (read in Delaware's print). 21 CFR 123.3: fish means finfish, crustaceans and all
 * molluscs, too.
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
    limits.equal(limit.limitF, limitF);
    expect(limit.limitC).toBeGreaterThanOrEqual((limitF - 32) / 1.8);
  });

  it("cools cooked food from 57 to 21 °C in 2 h and to 5 °C in 6 h, food of the room's warmth to 5 °C in 4 h", () => {
    const { startC, firstC, firstMin, coldC, cookedMin, ambientMin } = COOLING_LIMITS;
    cooling.equal([startC, firstC, firstMin], [57, 21, 2 * 60]);
    cooling.equal([coldC, cookedMin], [5, 6 * 60]);
    cooling.equal(ambientMin, 4 * 60);
  });

  it("holds fish for 17 s, and nothing else", () => {
    limits.equal(coreLimit("fish").holdS, 17);
    for (const foodClass of ["poultry", "groundMeat", "egg", "wholeMeat", "plant", "readyToEat"] as const)
      expect(coreLimit(foodClass).holdS).toBe(0);
  });

  it("never has less than the Food Code's 155 °F for raw eggs that are pooled", () => {
    expect(coreLimit("egg").limitF).toBeGreaterThanOrEqual(155);
  });

  it.each(["poultry", "fish", "egg", "plant"] as const)("reheats %s that was cooked and cooled to 165 °F", (one) => {
    expect(coreLimit(one, "cooked and cooled")).toMatchObject({ limitF: 165, holdS: 0 });
    expect(coreLimit(one, "cooked and cooled").source).toContain("3-403.11");
  });

  it("does not take an intact cut's 145 °F for pieces pressed from it", () => {
    expect(coreLimit("wholeMeat").limitF).toBe(160);
    expect(coreLimit("wholeMeat").source).toContain("145 °F");
  });
});
