import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseQuantity } from "../../../../kernel-lib/library/src/units/typed/parse-quantity";

describe("parseQuantity", () => {
  it.each([
    ["1 1/2 tsp", 1.5, "tsp", "volume", 1.5 * 4.92892159375],
    ["1½ tsp", 1.5, "tsp", "volume", 1.5 * 4.92892159375],
    ["1/4 in", 0.25, "in", "length", 6.35],
    ['1/4"', 0.25, "in", "length", 6.35],
    ["1-1/2 in", 1.5, "in", "length", 38.1],
    ["3 lb 2 oz", 3.125, "lb", "mass", 3.125 * 453.59237],
    ["1 cup + 2 tbsp", 1.125, "cup", "volume", 1.125 * 236.5882365],
    ["1 h and 15 min", 1.25, "h", "time", 75],
    ["-18 °C", -18, "°C", "temperature", -18],
    ["− 18 C", -18, "°C", "temperature", -18],
    ["212 F", 212, "°F", "temperature", 100],
    ["18 °F difference", 18, "°F difference", "temperatureDifference", 10],
    ["2 fl oz", 2, "fl oz", "volume", 59.147059125],
    ["  .5   kg ", 0.5, "kg", "mass", 500],
    ["250mL", 250, "mL", "volume", 250],
  ])("reads %s", (text, amount, unit, kind, kitchenValue) => {
    const quantity = parseQuantity(text);
    expect(quantity.unit).toBe(unit);
    expect(quantity.kind).toBe(kind);
    expect(quantity.amount).toBeCloseTo(amount, 10);
    expect(quantity.kitchenValue).toBeCloseTo(kitchenValue, 9);
  });

  it.each([
    ["", "must be a number and a unit"],
    ["tsp", "must begin with a number"],
    ["5", "must give a unit"],
    ["1,5 g", "decimal point, no comma"],
    ["2-3 tsp", "must begin with a number|must use one of the units"],
    ["1/0 cup", "must not divide by zero"],
    ["2 handfuls", "must use one of the units"],
    ["3 lb 2 cups", "parts of one kind"],
    ["200 °C 5 °C", "must not add temperatures"],
    ["250 g chopped", "must begin with a number"],
  ])("refuses %j", (text, message) => {
    expect(() => parseQuantity(text)).toThrow(new RegExp(message));
  });

  it("adds the parts of any pound-and-ounce weight", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 15 }), (lb, oz) => {
        expect(parseQuantity(`${lb} lb ${oz} oz`).kitchenValue).toBeCloseTo((lb + oz / 16) * 453.59237, 8);
      }),
    );
  });
});
