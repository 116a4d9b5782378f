import { describe, expect, it } from "vitest";
import type { FoodClass, FoodState } from "../../../kernel-lib/library/src/food/formula/formula";
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

  it("calls every raw class raw, par-cooked or not, and has the strictest limit for what was cooked and cooled", () => {
    for (const foodClass of CLASSES) {
      const plain = coreLimit(foodClass);
      expect(plain.raw).toBe(!["plant", "readyToEat"].includes(foodClass));
      expect(plain.state).toBe(plain.raw ? "raw" : null);
      const parCooked = coreLimit(foodClass, "par-cooked");
      expect(parCooked).toMatchObject({ state: "par-cooked", raw: true, limitC: plain.limitC, holdS: plain.holdS });
      expect(parCooked.caution).toContain("labelled as raw");
      const cooled = coreLimit(foodClass, "cooked and cooled");
      expect(cooled).toMatchObject({ foodClass, raw: false, limitC: 74, limitF: 165, holdS: 0 });
      expect(cooled.caution).toContain("3-501.14");
    }
    expect(coreLimit()).toMatchObject({ state: "raw", raw: true });
  });

  it("refuses a state it does not know", () => {
    expect(() => coreLimit("fish", "warm" as FoodState)).toThrow(
      'coreLimit: state must be one of raw, par-cooked, cooked and cooled, got "warm"',
    );
  });

  it("refuses a class it does not know, naming those it does", () => {
    expect(() => coreLimit("soup" as FoodClass)).toThrow(/coreLimit: foodClass must be one of poultry, .* got "soup"/);
  });

  it("says to hold where the source does, and nothing of holding elsewhere", () => {
    expect(coreLimit("fish").caution).toMatch(
      /^Core at least 68\.5 °C \(155 °F\), held for 17 s, in every piece\. Raw inside/,
    );
    expect(coreLimit("groundMeat").caution).toMatch(/^Core at least 71\.5 °C \(160 °F\) in every piece\. Raw inside/);
    expect(coreLimit("plant").caution).toMatch(/^Core at least 74 °C \(165 °F\) in every piece\. Local food codes/);
  });
});
