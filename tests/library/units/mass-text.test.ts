import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { grams } from "../../../kernel-lib/library/src/units/kitchen-units";
import { massText, ownMassText } from "../../../kernel-lib/library/src/units/mass-text";

describe("massText", () => {
  it("says pounds and ounces, never 16 oz, beside grams", () => {
    expect(massText(1190, "us")).toBe("2 lb 10 oz (1190 g)");
    expect(massText(1190, "metric")).toBe("1190 g (2 lb 10 oz)");
    expect(massText(grams("2 lb"), "us")).toBe("2 lb (907 g)");
    expect(massText(grams("1 lb 15.98 oz"), "us")).toBe("2 lb (907 g)");
    expect(massText(grams("26.2 oz"), "us")).toBe("1 lb 10.2 oz (743 g)");
    expect(massText(0, "us")).toBe("0 oz (0 g)");
  });

  it("reads back to half of its last digit", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20000, noNaN: true }), (massG) => {
        const us = grams(ownMassText(massG, "us"));
        expect(Math.abs(us - massG)).toBeLessThanOrEqual((massG < 113 ? 0.005 : 0.05) * 28.35 + 1e-9);
        expect(Math.abs(grams(ownMassText(massG, "metric")) - massG)).toBeLessThanOrEqual(
          massG < 100 ? 0.0501 : 0.5001,
        );
        expect(ownMassText(massG, "us")).not.toContain("16 oz");
      }),
    );
  });

  it("refuses what is no mass", () => {
    expect(() => massText(-1, "us")).toThrow("massText: massG must be >= 0 g, got -1");
  });
});
