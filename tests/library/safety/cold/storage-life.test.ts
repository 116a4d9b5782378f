import fc from "fast-check";
import { STORAGE_LIVES, storageLife } from "slabwright/safety";
import { describe, expect, test } from "vitest";

describe("storageLife", () => {
  test("time adds, warmth and a loose pack cost, and the range holds the value", () => {
    const step = fc.record({
      temperatureC: fc.double({ min: -40, max: -5, noNaN: true }),
      days: fc.double({ min: 0, max: 300, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 5 }), fc.array(step, { maxLength: 5 }), (one, other) => {
        const of = (steps: typeof one, packagingFactor = 1) =>
          storageLife({ steps, food: "raw poultry", packagingFactor });
        expect(of([...one, ...other]).used).toBeCloseTo(of(one).used + of(other).used, 9);
        const { used, usedRange, leftDays, leftDaysRange } = of(one);
        expect(usedRange[0]).toBeLessThanOrEqual(used);
        expect(usedRange[1]).toBeGreaterThanOrEqual(used);
        expect(leftDaysRange[0]).toBeLessThanOrEqual(leftDays);
        expect(leftDaysRange[1]).toBeGreaterThanOrEqual(leftDays);
        expect(of(one, 0.5).used).toBeCloseTo(2 * used, 9);
        const warmer = one.map(({ temperatureC, days }) => ({ temperatureC: Math.min(-5, temperatureC + 2), days }));
        expect(of(warmer).used).toBeGreaterThanOrEqual(used - 1e-12);
      }),
    );
  });

  test("says where each life is from, and that it is no matter of safety", () => {
    for (const [food, { source }] of Object.entries(STORAGE_LIVES)) {
      const life = storageLife({ steps: [], food: food as keyof typeof STORAGE_LIVES });
      expect(life.source).toBe(source);
      expect(source).toMatch(/home freezer guides|from memory/);
      expect(life.caution).toMatch(/quality, not safety/);
    }
    expect(storageLife({ steps: [], food: "vegetable", packagingFactor: 0.5 }).source).toMatch(/no source$/);
  });

  test("refuses food that has begun to thaw, and what is not known", () => {
    const thawing = [{ temperatureC: -2, days: 1 }];
    expect(() => storageLife({ steps: thawing, lifeDays: 100 })).toThrow(/must be between -40 and -5 °C, got -2/);
    expect(() => storageLife({ steps: [] })).toThrow(/food must be one of raw poultry/);
    expect(() => storageLife({ steps: [], food: "constructor" as "vegetable" })).toThrow(/food must be one of/);
  });
});
