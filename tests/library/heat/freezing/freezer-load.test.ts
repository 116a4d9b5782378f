import fc from "fast-check";
import { enthalpyAt } from "slabwright/food";
import { freezerLoad, pullDownW } from "slabwright/heat";
import { describe, expect, test } from "vitest";

const food = {
  densityKgM3: 1050,
  waterFraction: 0.735,
  freezingPointC: -1,
  latentKJkg: 216.1728,
  thawedSpecificHeatKJkgK: 3.5,
  frozenSpecificHeatKJkgK: 2,
  thawedConductivityWmK: 0.49,
  frozenConductivityWmK: 1.5,
};

describe("freezerLoad", () => {
  // h(−18) = −238.1632 kJ/kg of this food, worked out apart from the library; 3.5·6 kJ/kg from 5 °C to −1 °C
  test("counts the heat of the enthalpy curve, and its ice", () => {
    const load = freezerLoad({ goods: [{ food, massKg: 2, fromC: 5 }], withinMin: 120, removesW: 100, storedKg: 20 });
    expect(load.heatKJ).toBeCloseTo(2 * (238.1632 + 21), 6);
    // 0.648 kg/kg of freezable water, 17/18 of it ice at −18 °C
    expect(load.iceKgPerHour).toBeCloseTo(0.648 * (17 / 18), 6);
    expect(load.neededW).toBeCloseTo((load.heatKJ * 1000) / 7200, 9);
  });

  test("heat is kept: what goes into stored food is what the freezer did not take", () => {
    const goods = fc.record({
      massKg: fc.double({ min: 0.1, max: 20, noNaN: true }),
      fromC: fc.double({ min: -10, max: 80, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(goods, { minLength: 1, maxLength: 4 }),
        fc.double({ min: 20, max: 600, noNaN: true }),
        fc.double({ min: 20, max: 400, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (list, withinMin, removesW, storedKg) => {
          const load = freezerLoad({ goods: list.map((one) => ({ food, ...one })), withinMin, removesW, storedKg });
          const heat = list.reduce(
            (sum, { massKg, fromC }) => sum + massKg * (enthalpyAt(food, fromC) - enthalpyAt(food, -18)),
            0,
          );
          expect(load.heatKJ).toBeCloseTo(heat, 6);
          const taken = (removesW * withinMin * 60) / 1000;
          expect((load.storedToC + 18) * 2 * storedKg).toBeCloseTo(Math.max(0, heat - taken), 6);
          expect(load.storedToRangeC[0]).toBeLessThanOrEqual(load.storedToC);
          expect(load.storedToRangeC[1]).toBeGreaterThanOrEqual(load.storedToC);
          // the share that may go in keeps stored food cold even with the weak freezer, and no more may
          const part = {
            goods: list.map((one) => ({ food, ...one, massKg: one.massKg * load.shareAtOnce })),
            withinMin,
            removesW,
            storedKg,
          };
          expect(freezerLoad(part).storedToRangeC[1]).toBeLessThanOrEqual(-12 + 1e-6);
          if (load.shareAtOnce < 1) expect(freezerLoad(part).storedToRangeC[1]).toBeCloseTo(-12, 6);
        },
      ),
      { numRuns: 100 },
    );
  });

  test("says what to do, and leaves judgement of thawed food to the code", () => {
    const goods = [{ food, massKg: 20, fromC: 60 }];
    const much = freezerLoad({ goods, withinMin: 60, removesW: 50, storedKg: 5 });
    expect(much.sentence).toMatch(/^Put in \d+ % of it and wait/);
    expect(much.caution).toMatch(/3-501\.11/);
    expect(freezerLoad({ goods, withinMin: 60, removesW: 50, storedKg: 0 }).storedToC).toBe(Number.POSITIVE_INFINITY);
    expect(freezerLoad({ goods: [], withinMin: 60, removesW: 50, storedKg: 0 }).sentence).toMatch(
      /^All of it may go in/,
    );
    expect(() => freezerLoad({ goods, withinMin: 0, removesW: 50, storedKg: 5 })).toThrow(/withinMin must be > 0 min/);
    expect(() => freezerLoad({ goods, withinMin: 60, removesW: 50, storedKg: 5, warmestC: -20 })).toThrow(
      /warmestC must be between/,
    );
  });
});

describe("pullDownW", () => {
  // 1 kg of water from 0 °C to ice at 0 °C gives up 333.6 kJ: in an hour 92.667 W
  test("is the heat of freezing over the time", () => {
    expect(pullDownW({ waterKg: 1, fromC: 0, toC: 0, minutes: 60 })).toBeCloseTo(333600 / 3600, 9);
    expect(() => pullDownW({ waterKg: 1, fromC: 15, toC: 2, minutes: 60 })).toThrow(/toC must be between -60 and 0 °C/);
  });
});
