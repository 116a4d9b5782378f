import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convertUnit } from "../../../kernel-lib/library/src/units/convert-unit";
import { UNITS } from "../../../kernel-lib/library/src/units/unit-table";

describe("convertUnit", () => {
  it.each([
    [1, "lb", "oz", 16],
    [1, "gallon", "cup", 16],
    [1, "cup", "tbsp", 16],
    [1, "tbsp", "tsp", 3],
    [1, "quart", "fl oz", 32],
    [-40, "°C", "°F", -40],
    [100, "°C", "°F", 212],
    [9, "°F difference", "K", 5],
    [1, "kcal", "kJ", 4.184],
    [1, "kWh", "kJ", 3600],
    [2, "h", "s", 7200],
  ])("%d %s is %s", (value, from, to, expected) => {
    expect(convertUnit({ value, from, to })).toBeCloseTo(expected, 9);
  });

  it("returns to where it began for every pair of units of a kind", () => {
    const unit = fc.constantFrom(...UNITS);
    fc.assert(
      fc.property(unit, unit, fc.double({ min: -1e4, max: 1e4, noNaN: true }), (from, to, value) => {
        fc.pre(from.kind === to.kind);
        const there = convertUnit({ value, from: from.name, to: to.name });
        const back = convertUnit({ value: there, from: to.name, to: from.name });
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(value)));
      }),
    );
  });

  it("keeps a temperature apart from a difference, and a volume from a mass", () => {
    expect(() => convertUnit({ value: 10, from: "°C", to: "K" })).toThrow("of one kind");
    expect(() => convertUnit({ value: 1, from: "cup", to: "g" })).toThrow("of one kind");
    expect(() => convertUnit({ value: Number.NaN, from: "g", to: "kg" })).toThrow("convertUnit: value");
  });
});
