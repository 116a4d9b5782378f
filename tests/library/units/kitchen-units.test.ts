import { describe, expect, it } from "vitest";
import {
  celsius,
  grams,
  kelvinDifference,
  kilocalories,
  millilitres,
  millimetres,
  minutes,
} from "../../../kernel-lib/library/src/units/kitchen-units";

describe("the kitchen units", () => {
  it("reads each kind", () => {
    expect(millimetres("3/8 in")).toBeCloseTo(9.525, 10);
    expect(grams("2 oz")).toBeCloseTo(56.69904625, 10);
    expect(millilitres("1 tbsp")).toBeCloseTo(14.78676478125, 9);
    expect(minutes("90 s")).toBeCloseTo(1.5, 12);
    expect(celsius("350 F")).toBeCloseTo(176.6667, 4);
    expect(kelvinDifference("5 K")).toBe(5);
    expect(kilocalories("1 kcal")).toBe(1);
  });

  it("names the kind that was given when it is the wrong one", () => {
    expect(() => grams("1 cup")).toThrow(/grams: text must be a mass .* \(a volume\)/);
    expect(() => kelvinDifference("18 °F")).toThrow(/\(a temperature\)/);
    expect(() => celsius("5 K")).toThrow(/\(a temperatureDifference\)/);
  });
});
