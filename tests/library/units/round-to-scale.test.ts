import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ownMassText } from "../../../kernel-lib/library/src/units/mass-text";
import { roundToScale } from "../../../kernel-lib/library/src/units/round-to-scale";

describe("roundToScale", () => {
  it("goes by tens of grams or half ounces, small batches by grams or tenths, the way that was asked", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20000, noNaN: true }),
        fc.constantFrom("us" as const, "metric" as const),
        (massG, units) => {
          const isSmall = massG < 200;
          const step = units === "us" ? 28.349523125 / (isSmall ? 10 : 2) : isSmall ? 1 : 10;
          const [down, nearest, up] = (["down", "nearest", "up"] as const).map((way) =>
            roundToScale(massG, units, way),
          );
          expect(down).toBeLessThanOrEqual(massG + 1e-4);
          expect(up).toBeGreaterThanOrEqual(massG - 1e-4);
          expect(up - down).toBeLessThanOrEqual(step + 1e-9);
          expect(Math.abs(nearest - massG)).toBeLessThanOrEqual(step / 2 + 1e-9);
          if (units === "us" && !isSmall) expect(ownMassText(nearest, units)).toMatch(/^(\d+ lb)?( ?\d+(\.5)? oz)?$/);
        },
      ),
    );
  });

  it("refuses what is no mass", () => {
    expect(() => roundToScale(-1, "us")).toThrow("roundToScale: massG must be >= 0 g, got -1");
  });
});
