import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fitCrispTimes, variantCrispTime } from "../../../kernel-lib/library/src/advice/variant-crisp-time";
import { predictSlabTime } from "../../../kernel-lib/library/src/fit/curve/predict-slab-time";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { seededRandom } from "../../../kernel-lib/library/src/statistics/random/seeded-random";
import type { CrispTime } from "../../../kernel-lib/library/src/trials/crisp-times";

interface Truth {
  readonly noise: { readonly crispTimeSd: number };
  readonly variants: Readonly<
    Record<string, { readonly crispTime: { readonly c0: number; readonly a: number; readonly b: number } }>
  >;
}
/** What the demo's trials were simulated from; see data/make/simulate-trials.mjs. */
const truth: Truth = JSON.parse(readFileSync("data/make/truth.json", "utf8"));
const kitchen = loadKitchen();
const variantIds = kitchen.variants.map((variant) => variant.variantId);

function trueMin(variantId: string, thicknessMm: number): number {
  const { c0, a, b } = truth.variants[variantId].crispTime;
  return c0 + a * thicknessMm + b * thicknessMm ** 2;
}

function inside([low, high]: readonly [number, number], value: number): boolean {
  return low <= value && value <= high;
}

describe("variantCrispTime on the demo trials", () => {
  it("finds the simulated truth again within its own intervals", () => {
    const places = variantIds.flatMap((variantId) => {
      const { fit } = variantCrispTime({ kitchen, variantId });
      const [thinnest, thickest] = fit.rangeX!;
      return [thinnest, (thinnest + thickest) / 2, thickest].map((thicknessMm) => {
        const at = predictSlabTime(fit, thicknessMm);
        return {
          curve: inside(at.confidence95, trueMin(variantId, thicknessMm)),
          nextTrial: inside(at.prediction95, trueMin(variantId, thicknessMm)),
        };
      });
    });
    expect(places).toHaveLength(15);
    // 15 intervals of 95 %: two misses or fewer in 96 of 100 kitchens, were they independent
    expect(places.filter((place) => !place.curve).length).toBeLessThanOrEqual(2);
    expect(places.filter((place) => !place.nextTrial)).toEqual([]);
  });
});

describe("variantCrispTime on 200 simulated kitchens", () => {
  it.each(variantIds)("%s: 95 %% intervals hold the truth in 90 to 99 of 100", (variantId) => {
    const random = seededRandom(20261125);
    const { times, fit } = variantCrispTime({ kitchen, variantId });
    const thicknesses = times.times.filter((time) => time.timeMin !== null).map((time) => time.thicknessMm);
    const [thinnest, thickest] = fit.rangeX!;
    const noisy = (thicknessMm: number): number =>
      trueMin(variantId, thicknessMm) * Math.exp(random.normal(0, truth.noise.crispTimeSd));
    const watched = (thicknessMm: number, at: number): CrispTime => {
      const lowerMin = Math.ceil(noisy(thicknessMm)) - 1;
      return { trialId: `S-${at}`, thicknessMm, lowerMin, upperMin: lowerMin + 1, timeMin: lowerMin + 0.5 };
    };
    let curveHits = 0;
    let trialHits = 0;
    const kitchens = 200;
    for (let seed = 0; seed < kitchens; seed++) {
      const simulated = fitCrispTimes({ times: thicknesses.map(watched), notices: [] });
      const thicknessMm = thinnest + (thickest - thinnest) * random.uniform();
      const at = predictSlabTime(simulated.fit, thicknessMm);
      if (inside(at.confidence95, trueMin(variantId, thicknessMm))) curveHits++;
      if (inside(at.prediction95, noisy(thicknessMm))) trialHits++;
    }
    expect(curveHits / kitchens).toBeGreaterThanOrEqual(0.9);
    expect(curveHits / kitchens).toBeLessThanOrEqual(0.99);
    expect(trialHits / kitchens).toBeGreaterThanOrEqual(0.9);
    expect(trialHits / kitchens).toBeLessThanOrEqual(0.995);
  });
});
