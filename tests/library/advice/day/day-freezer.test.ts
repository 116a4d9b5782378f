import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dayFreezer } from "../../../../kernel-lib/library/src/advice/day/day-freezer";
import { settlePlaces } from "../../../../kernel-lib/library/src/advice/day/day-places";

const places = settlePlaces({ freezerC: -20, freezerRemovesW: 100, storedKg: 20 }, "test");
const load = (startMin: number, minutes: number, heatKJ: number) => ({
  startMin,
  endMin: startMin + minutes,
  heatKJ,
  iceKg: heatKJ / 400,
});

describe("dayFreezer", () => {
  test("what is not taken away in time goes into the stored food: worked by hand", () => {
    // 1200 kJ in 100 min, 600 kJ taken away: 600 kJ in 20 kg at 2 kJ/(kg K) are 15 K
    const one = dayFreezer([load(600, 100, 1200)], places, "metric");
    expect(one.storedToC).toBeCloseTo(-5, 9);
    expect(one.neededW).toBeCloseTo(200, 9);
    expect(one.iceKgPerHour).toBeCloseTo(1.8, 9);
    expect(one.warmestMin).toBe(700);
    expect(one.keepsUp).toBe(false);
    // one after the other it keeps up
    const apart = dayFreezer([load(600, 100, 600), load(700, 100, 600)], places, "metric");
    expect(apart.storedToC).toBeCloseTo(-20, 9);
    expect(apart.sentence).toMatch(/0.9 kg|900 g/);
  });

  test("more heat is never colder, more power never warmer, and the doubt lies around it", () => {
    const span = fc.tuple(
      fc.integer({ min: 0, max: 600 }),
      fc.integer({ min: 5, max: 300 }),
      fc.integer({ min: 0, max: 2000 }),
    );
    fc.assert(
      fc.property(fc.array(span, { minLength: 1, maxLength: 6 }), fc.integer({ min: 10, max: 400 }), (spans, watts) => {
        const loads = spans.map(([start, minutes, heat]) => load(start, minutes, heat));
        const at = (freezerRemovesW: number, all = loads) =>
          dayFreezer(all, { ...places, freezerRemovesW }, "metric").storedToC as number;
        expect(at(watts, loads.slice(1).length > 0 ? loads.slice(1) : loads)).toBeLessThanOrEqual(at(watts) + 1e-9);
        expect(at(2 * watts)).toBeLessThanOrEqual(at(watts) + 1e-9);
        const { storedToRangeC } = dayFreezer(loads, { ...places, freezerRemovesW: watts }, "metric");
        const [low, high] = storedToRangeC as readonly [number, number];
        expect(low).toBeLessThanOrEqual(at(watts) + 1e-9);
        expect(high).toBeGreaterThanOrEqual(at(watts) - 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test("an empty freezer and an empty day are said, not divided by", () => {
    expect(dayFreezer([load(0, 60, 500)], { ...places, storedKg: 0 }, "metric").storedToC).toBeNull();
    expect(dayFreezer([], places, "us")).toMatchObject({ neededW: 0, iceKgPerHour: 0, keepsUp: true });
  });
});
