import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BlendPart, blend } from "../../../../kernel-lib/library/src/food/formula/blend";
import { NUTRIENT_NAMES, type Nutrients } from "../../../../kernel-lib/library/src/food/ingredient/nutrients";

const UNKNOWN = Object.fromEntries(NUTRIENT_NAMES.map((name) => [name, null])) as unknown as Nutrients;
const part = (name: string, massG: number, known: Partial<Nutrients>): BlendPart => ({
  massG,
  ingredient: { name, per100G: { ...UNKNOWN, ...known } },
});

describe("blend", () => {
  it("adds what is known, and names what is not", () => {
    const mixed = blend([
      part("lentils", 300, { proteinG: 9, fatG: 0.4 }),
      part("dill", 100, { proteinG: 3 }),
      part("dill", 0, {}),
    ]);
    expect(mixed.massG).toBe(400);
    expect(mixed.totals.proteinG).toBeCloseTo(30, 12);
    expect(mixed.per100G.proteinG).toBeCloseTo(7.5, 12);
    expect(mixed.totals.fatG).toBeCloseTo(1.2, 12);
    expect(mixed.missing.proteinG).toBeUndefined();
    expect(mixed.missing.fatG).toEqual(["dill"]);
    expect(mixed.totals.sugarsG).toBeNull();
    expect(mixed.missing.sugarsG).toEqual(["lentils", "dill"]);
  });

  it("lies between its parts and does not depend on their order or on the batch", () => {
    const amount = fc.double({ min: 0.1, max: 1000, noNaN: true });
    const content = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(amount, content), { minLength: 1, maxLength: 8 }), amount, (list, times) => {
        const parts = list.map(([massG, proteinG], at) => part(`food ${at}`, massG, { proteinG }));
        const mean = blend(parts).per100G.proteinG!;
        const contents = list.map(([, proteinG]) => proteinG);
        expect(mean).toBeGreaterThanOrEqual(Math.min(...contents) - 1e-9);
        expect(mean).toBeLessThanOrEqual(Math.max(...contents) + 1e-9);
        expect(blend([...parts].reverse()).per100G.proteinG).toBeCloseTo(mean, 8);
        const larger = parts.map((one) => ({ ...one, massG: one.massG * times }));
        expect(blend(larger).per100G.proteinG).toBeCloseTo(mean, 8);
      }),
    );
  });

  it("refuses nothing at all", () => {
    expect(() => blend([])).toThrow("mass of all parts must be > 0 g");
  });
});
