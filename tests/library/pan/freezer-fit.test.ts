import fc from "fast-check";
import { loadKitchen } from "slabwright/notebook";
import { freezerFit, panOutline } from "slabwright/pan";
import { describe, expect, test } from "vitest";

const shelves = { lengthMm: 620, widthMm: 460, clearMm: 210, shelves: 3 };
const sheet = { name: "half sheets", lengthMm: 436, widthMm: 309, heightMm: 25, count: 4 };

describe("freezerFit", () => {
  test("grows upwards with gaps, and what has no place waits", () => {
    // 25 + 30 mm each: three in 210 mm; one beside each other
    expect(freezerFit({ shelves, things: [sheet] })).toMatchObject({
      things: [{ perShelf: 1, stack: 3, fits: 4, waits: 0, shelvesUsed: 2 }],
      shelvesLeft: 1,
      sentence: "All of it fits; 1 of 3 shelves stay free.",
    });
    expect(freezerFit({ shelves, things: [{ ...sheet, count: 12 }] }).sentence).toBe(
      "3 of 12 half sheets must wait until there is room.",
    );
    // frozen packs need no air between them
    const packs = { name: "packs", lengthMm: 200, widthMm: 150, heightMm: 60, count: 100, apart: false };
    expect(freezerFit({ shelves, things: [packs] }).things[0]).toMatchObject({ stack: 3, fits: 54, waits: 46 });
    // what comes first has its shelves first
    expect(freezerFit({ shelves, things: [{ ...sheet, count: 7 }, packs] }).things.map(({ fits }) => fits)).toEqual([
      7, 0,
    ]);
  });

  test("never holds more than the room, and a larger freezer never less", () => {
    const side = fc.integer({ min: 30, max: 500 });
    const thing = fc.record({
      lengthMm: side,
      widthMm: side,
      heightMm: fc.integer({ min: 5, max: 150 }),
      count: fc.integer({ min: 0, max: 60 }),
      apart: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(thing, { minLength: 1, maxLength: 3 }), fc.integer({ min: 1, max: 6 }), (all, count) => {
        const things = all.map((one, at) => ({ ...one, name: String(at) }));
        const of = (number: number) => freezerFit({ shelves: { ...shelves, shelves: number }, things });
        const fit = of(count);
        expect(fit.filled).toBeLessThanOrEqual(1);
        const volume = fit.things.reduce(
          (sum, { fits }, at) => sum + fits * things[at].lengthMm * things[at].widthMm * things[at].heightMm,
          0,
        );
        expect(volume).toBeLessThanOrEqual(count * 620 * 460 * 210);
        for (const [at, { fits, waits }] of fit.things.entries()) expect(fits + waits).toBe(things[at].count);
        const total = (one: typeof fit): number => one.things.reduce((sum, { fits }) => sum + fits, 0);
        expect(total(of(count + 1))).toBeGreaterThanOrEqual(total(fit));
      }),
      { numRuns: 80 },
    );
  });

  test("every pan of a kitchen has an outline wider than its bottom", () => {
    for (const pan of loadKitchen().pans) {
      const { lengthMm, widthMm, heightMm } = panOutline(pan);
      expect(lengthMm).toBeGreaterThanOrEqual(widthMm);
      expect(heightMm).toBe(pan.depthMm);
      if (pan.shape === "rectangle") expect(lengthMm).toBeGreaterThan(pan.bottomLengthMm);
      if (pan.shape === "wells")
        expect(lengthMm * widthMm).toBeGreaterThan((pan.wells * Math.PI * pan.bottomDiameterMm ** 2) / 4);
    }
    expect(() => freezerFit({ shelves: { ...shelves, shelves: 0 }, things: [] })).toThrow(/shelves must be a whole/);
  });
});
