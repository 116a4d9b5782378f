import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { celsius } from "../../../kernel-lib/library/src/units/kitchen-units";
import { ownTemperatureText, temperatureText } from "../../../kernel-lib/library/src/units/temperature-text";

describe("temperatureText", () => {
  it("gives back what was typed, the kitchen's unit first", () => {
    expect(temperatureText(celsius("390 °F"), "us")).toBe("390 °F (199 °C)");
    expect(temperatureText(celsius("390 °F"), "metric")).toBe("198.9 °C (390 °F)");
    expect(temperatureText(-18, "us")).toBe("-0.4 °F (-18 °C)");
    expect(temperatureText(celsius("0 °F"), "us")).toBe("0 °F (-18 °C)");
    expect(temperatureText(-0.01, "metric")).toBe("0 °C (32 °F)");
  });

  it("tells a core just below its limit from one at it", () => {
    expect(temperatureText(73.8, "us")).toBe("164.8 °F (73.8 °C)");
  });

  it("gives back every whole °F in a US kitchen and every half °C in a metric one", () => {
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 550 }), (typed) => {
        expect(temperatureText(celsius(`${typed} °F`), "us")).toMatch(new RegExp(`^${typed} °F \\(`));
        expect(temperatureText(typed / 2, "metric")).toMatch(new RegExp(`^${typed / 2} °C \\(`));
      }),
    );
  });

  it("says one unit in a sentence, to a tenth or whole", () => {
    expect(ownTemperatureText(73.8, "us")).toBe("164.8 °F");
    expect(ownTemperatureText(73.8, "metric", 0)).toBe("74 °C");
    expect(ownTemperatureText(-17.79, "us", 0)).toBe("0 °F");
  });

  it("refuses what is no temperature", () => {
    expect(() => temperatureText(Number.NaN, "us")).toThrow(
      "temperatureText: temperatureC must be a finite number in °C",
    );
  });
});
