import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { celsius } from "../../../kernel-lib/library/src/units/kitchen-units";
import { ownSettingText, settingText } from "../../../kernel-lib/library/src/units/setting-text";

/** The numbers of a printed setting, by unit. */
function printed(text: string): { c: number; f: number; first: string } {
  const [, one, unit, other] = /^(-?[\d.]+) (°[CF]) \((-?[\d.]+) °[CF]\)$/.exec(text) as RegExpExecArray;
  const [c, f] = unit === "°C" ? [one, other] : [other, one];
  return { c: Number(c), f: Number(f), first: unit };
}

describe("settingText", () => {
  it("prints a setting typed in °F as it was typed", () => {
    expect(settingText(celsius("400 °F"))).toBe("400 °F (204 °C)");
    expect(settingText(celsius("402 °F"))).toBe("402 °F (206 °C)");
    // a log in °C to a tenth of a degree still gives the setting back
    expect(settingText(204.4)).toBe("400 °F (204 °C)");
    expect(settingText(198.9)).toBe("390 °F (199 °C)");
  });

  it("prints a setting typed in °C as it was typed, with no lower °F", () => {
    expect(settingText(204)).toBe("204 °C (400 °F)");
    expect(settingText(205)).toBe("205 °C (405 °F)");
    expect(settingText(185)).toBe("185 °C (365 °F)");
    expect(settingText(203.7)).toBe("203.7 °C (400 °F)");
  });

  it("gives back every multiple of 5 °F, whatever the way through °C", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 42, max: 110 }),
        fc.double({ min: -0.29, max: 0.29, noNaN: true }),
        (fives, off) => {
          const typedF = 5 * fives;
          expect(printed(settingText(celsius(`${typedF} °F`))).f).toBe(typedF);
          const nearC = (typedF + off - 32) / 1.8;
          expect(printed(settingText(nearC)).f).toBe(typedF);
        },
      ),
    );
  });

  it("gives back every whole °C and never sets the °F lower than that", () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 290 }), (settingC) => {
        const { c, f, first } = printed(settingText(settingC));
        expect([c, first]).toEqual([settingC, "°C"]);
        expect(f % 5).toBe(0);
        expect(f).toBeGreaterThanOrEqual(settingC * 1.8 + 32 - 0.3);
        expect(f - (settingC * 1.8 + 32)).toBeLessThan(5);
      }),
    );
  });

  it("stays within 0.3 °F below and 5 °F above any setting, and within half a degree in °C", () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 290, noNaN: true }), (settingC) => {
        const { c, f } = printed(settingText(settingC));
        expect(f - (settingC * 1.8 + 32)).toBeGreaterThanOrEqual(-0.3 - 1e-9);
        expect(f - (settingC * 1.8 + 32)).toBeLessThan(5);
        expect(Math.abs(c - settingC)).toBeLessThanOrEqual(0.5);
      }),
      { numRuns: 2000 },
    );
  });

  it("puts the kitchen's own unit first, never lower than the setting where it is dialled", () => {
    expect(settingText(celsius("390 °F"), "us")).toBe("390 °F (199 °C)");
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 290, noNaN: true }),
        fc.constantFrom("us" as const, "metric" as const),
        (settingC, units) => {
          const { c, f, first } = printed(settingText(settingC, units));
          expect(first).toBe(units === "us" ? "°F" : "°C");
          expect(units === "us" ? f - (settingC * 1.8 + 32) : c - settingC).toBeGreaterThanOrEqual(-0.3 - 1e-9);
        },
      ),
    );
  });

  it("says one unit in a sentence, but for what a metric kitchen typed in °F", () => {
    expect(ownSettingText(celsius("390 °F"), "us")).toBe("390 °F");
    expect(ownSettingText(200, "us")).toBe("395 °F");
    expect(ownSettingText(200, "metric")).toBe("200 °C");
    expect(ownSettingText(celsius("390 °F"), "metric")).toBe("199 °C (390 °F)");
  });

  it("refuses what is no number", () => {
    expect(() => settingText(Number.NaN)).toThrow("settingText: settingC must be a finite number in °C, got NaN");
  });
});
