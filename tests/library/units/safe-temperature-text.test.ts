import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { celsius } from "../../../kernel-lib/library/src/units/kitchen-units";
import { safeTemperatureText } from "../../../kernel-lib/library/src/units/safe-temperature-text";

/** The numbers of a printed temperature, by unit. */
function printed(text: string): { c: number; f: number } {
  const [, one, unit, other] = /^(-?[\d.]+) (°[CF]) \((-?[\d.]+) °[CF]\)$/.exec(text) as RegExpExecArray;
  return unit === "°C" ? { c: Number(one), f: Number(other) } : { c: Number(other), f: Number(one) };
}

describe("safeTemperatureText", () => {
  it("prints the limits of the sources, typed in either unit", () => {
    expect(safeTemperatureText(celsius("165 °F"))).toBe("165 °F (74 °C)");
    expect(safeTemperatureText(celsius("160 °F"))).toBe("160 °F (71.5 °C)");
    expect(safeTemperatureText(celsius("155 °F"))).toBe("155 °F (68.5 °C)");
    expect(safeTemperatureText(74)).toBe("74 °C (166 °F)");
    expect(safeTemperatureText(-0.1)).toBe("0 °C (32 °F)");
  });

  it("never rounds °C or °F down, nor adds half a °C or a °F", () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 120, noNaN: true }), (leastC) => {
        const { c, f } = printed(safeTemperatureText(leastC));
        const exactF = leastC * 1.8 + 32;
        expect(c).toBeGreaterThanOrEqual(leastC - 1e-6);
        expect(f).toBeGreaterThanOrEqual(exactF - 1e-6);
        expect(c - leastC).toBeLessThan(0.5);
        expect(f - exactF).toBeLessThan(1);
      }),
      { numRuns: 2000 },
    );
  });

  it("gives back every whole °F and every half °C as it was typed", () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 230 }), (typed) => {
        expect(printed(safeTemperatureText(celsius(`${typed} °F`))).f).toBe(typed);
        expect(safeTemperatureText(typed / 2)).toMatch(new RegExp(`^${typed / 2} °C`));
      }),
    );
  });

  it("puts the kitchen's own unit first", () => {
    expect(safeTemperatureText(75, "us")).toBe("167 °F (75 °C)");
    expect(safeTemperatureText(celsius("165 °F"), "metric")).toBe("74 °C (165 °F)");
  });

  it("refuses what is no number", () => {
    expect(() => safeTemperatureText(Number.POSITIVE_INFINITY)).toThrow("must be a finite number in °C");
  });
});
