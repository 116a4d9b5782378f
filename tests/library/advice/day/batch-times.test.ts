import { batchTimes, settlePlaces } from "slabwright/advice";
import { thermalProperties } from "slabwright/food";
import { freezerCoefficients, simulateSlab } from "slabwright/heat";
import { loadKitchen } from "slabwright/notebook";
import { coolingCheck } from "slabwright/safety";
import { describe, expect, test } from "vitest";

const kitchen = loadKitchen();
const places = settlePlaces({ freezerC: -20 }, "test");
const times = batchTimes({ kitchen, batch: { variantId: "turkey-sage", cookMin: 9.5 }, places, stacked: 1 });

describe("batchTimes", () => {
  test("a load that lies out for as long as it may still passes the two-stage limit in the slowest air", () => {
    const cooking = times.cooking as NonNullable<typeof times.cooking>;
    const { variant, batch } = times;
    const food = thermalProperties(variant.composition, { airFraction: variant.formula.airFraction, thawedAtC: 5 });
    const slab = { food, thicknessMm: batch.slab.thicknessMm, drying: "none" as const };
    const out = simulateSlab({ ...slab, startC: 84, airC: 20, coefficientWm2K: 6, endMin: cooking.longestOutMin });
    const warmC = Math.max(...out.coreC.slice(-1));
    const { coefficientWm2K, coefficientBelowWm2K } = freezerCoefficients({ airC: -20 });
    const cold = simulateSlab({
      ...slab,
      startC: warmC,
      airC: -20,
      coefficientWm2K: 0.6 * coefficientWm2K,
      coefficientBelowWm2K: 0.6 * coefficientBelowWm2K,
      endMin: 600,
      stopCoreC: 4,
    });
    const check = coolingCheck({
      timesMin: [...out.timeMin, ...cold.timeMin.slice(1).map((min) => min + cooking.longestOutMin)],
      temperaturesC: [...out.coreC, ...cold.coreC.slice(1)],
    });
    expect(check.sentence).toMatch(/^Cooled in time/);
    expect(cooking.timeMin).toBe(10);
    expect(cooking.source).toBe("as given");
  });

  test("every wait has its range around it, and what is said not to be cooked is not", () => {
    const raw = batchTimes({ kitchen, batch: { variantId: "turkey-sage", cookMin: 0 }, places, stacked: 3 });
    expect(raw.cooking).toBeNull();
    for (const wait of [times.firm, times.workable, times.flash, raw.firm, raw.flash]) {
      expect(wait?.earliestMin as number).toBeLessThan(wait?.timeMin as number);
      expect(wait?.latestMin as number).toBeGreaterThan(wait?.timeMin as number);
    }
    // pans above each other freeze more slowly
    expect(raw.firm?.timeMin as number).toBeGreaterThan(times.firm?.timeMin as number);
  });
});
