import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fitCrispTimes, variantCrispTime } from "../../../../kernel-lib/library/src/advice/curve/variant-crisp-time";
import { predictSlabTime } from "../../../../kernel-lib/library/src/fit/curve/predict-slab-time";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";
import type { CrispTime } from "../../../../kernel-lib/library/src/trials/crisp-times";

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

describe("variantCrispTime beyond what the demo tried", () => {
  it("holds the simulated truth at 18 and 25 mm: 17.2 and 24.8 min of the beet bites", () => {
    expect(trueMin("beet-lentil", 18)).toBeCloseTo(17.2, 1);
    expect(trueMin("beet-lentil", 25)).toBeCloseTo(24.8, 1);
    const places = variantIds.flatMap((variantId) =>
      [18, 25].map((thicknessMm) => {
        const at = predictSlabTime(variantCrispTime({ kitchen, variantId }).fit, thicknessMm);
        expect(at.extrapolated).toBe(true);
        return {
          curve: inside(at.confidence95, trueMin(variantId, thicknessMm)),
          nextTrial: inside(at.prediction95, trueMin(variantId, thicknessMm)),
        };
      }),
    );
    expect(places.filter((place) => !place.nextTrial)).toEqual([]);
    expect(places.filter((place) => !place.curve).length).toBeLessThanOrEqual(1);
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
      const simulated = fitCrispTimes({ times: thicknesses.map(watched), notices: [], units: "metric" });
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

  it.each(variantIds)("%s: and beyond what was tried, with trials that ended before they were crisp", (variantId) => {
    const random = seededRandom(20261126);
    const { times } = variantCrispTime({ kitchen, variantId });
    const thicknesses = times.times.map((time) => time.thicknessMm);
    // the demo's own trials, those that ended early at the share of the time at which they did
    const ended = times.times.map((time) =>
      time.upperMin === null ? time.lowerMin / trueMin(variantId, time.thicknessMm) : Number.POSITIVE_INFINITY,
    );
    const noisy = (thicknessMm: number): number =>
      trueMin(variantId, thicknessMm) * Math.exp(random.normal(0, truth.noise.crispTimeSd));
    const watched = (thicknessMm: number, at: number): CrispTime => {
      const crispMin = noisy(thicknessMm);
      const stopMin = ended[at] * trueMin(variantId, thicknessMm);
      const trialId = `S-${at}`;
      if (stopMin < crispMin) return { trialId, thicknessMm, lowerMin: stopMin, upperMin: null, timeMin: null };
      // looked at every minute from a start of its own
      const phase = random.uniform();
      const lowerMin = Math.floor(crispMin - phase) + phase;
      return { trialId, thicknessMm, lowerMin, upperMin: lowerMin + 1, timeMin: lowerMin + 0.5 };
    };
    const kitchens = 200;
    const places = [0.7 * Math.min(...thicknesses), 18, 25];
    const hits = places.map(() => ({ curve: 0, next: 0 }));
    for (let seed = 0; seed < kitchens; seed++) {
      const simulated = fitCrispTimes({ times: thicknesses.map(watched), notices: [], units: "metric" });
      places.forEach((thicknessMm, k) => {
        const at = predictSlabTime(simulated.fit, thicknessMm);
        if (inside(at.confidence95, trueMin(variantId, thicknessMm))) hits[k].curve++;
        if (inside(at.prediction95, noisy(thicknessMm))) hits[k].next++;
      });
    }
    for (const { curve, next } of hits) {
      expect(curve / kitchens).toBeGreaterThanOrEqual(0.92);
      expect(next / kitchens).toBeGreaterThanOrEqual(0.92);
    }
  });
});

describe("fitCrispTimes", () => {
  const seen = (thicknessMm: number, timeMin: number): CrispTime => ({
    trialId: `T-${thicknessMm}-${timeMin}`,
    thicknessMm,
    lowerMin: timeMin - 0.5,
    upperMin: timeMin + 0.5,
    timeMin,
  });
  const times = [
    seen(7, 7.4),
    seen(8, 8.1),
    seen(9, 9),
    seen(11, 10.6),
    seen(12, 11.4),
    seen(14, 12.9),
    seen(15, 13.6),
  ];
  const never: CrispTime = { trialId: "T-never", thicknessMm: 17, lowerMin: 19, upperMin: null, timeMin: null };

  it("counts a trial that never was crisp: its curve and bands rise, and it says so", () => {
    const without = fitCrispTimes({ times, notices: [], units: "metric" });
    const { fit, comparison } = fitCrispTimes({ times: [...times, never], notices: [], units: "metric" });
    expect(predictSlabTime(fit, 17).timeMin).toBeGreaterThan(predictSlabTime(without.fit, 17).timeMin + 0.5);
    expect(predictSlabTime(fit, 17).confidence95[1]).toBeGreaterThan(19);
    expect(fit.notices).toContain("Counted for what they rule out: 1 that ended before.");
    // forms are compared on the trials seen from both sides, and the range that was tried is theirs
    expect(comparison.n).toBe(7);
    expect(fit.rangeX).toEqual([7, 15]);
  });
  it("leaves a trial that ended early on the safe side all but without a say", () => {
    const early = { ...never, lowerMin: 3 };
    const without = predictSlabTime(fitCrispTimes({ times, notices: [], units: "metric" }).fit, 12);
    const withEarly = predictSlabTime(
      fitCrispTimes({ times: [...times, early], notices: [], units: "metric" }).fit,
      12,
    );
    expect(withEarly.timeMin).toBeCloseTo(without.timeMin, 6);
    expect(withEarly.confidence95[1]).toBeCloseTo(without.confidence95[1], 6);
  });
  it("takes what two thicknesses carry, a line whose bands may bend", () => {
    const { fit } = fitCrispTimes({
      times: [seen(8, 8), seen(8, 8.5), seen(12, 12), seen(12, 12.4)],
      notices: [],
      units: "metric",
    });
    expect(fit.form).toBe("linear");
    expect(fit.bandForm).toBe("full");
    const { timeMin, confidence95 } = predictSlabTime(fit, 20);
    expect(confidence95[1] - timeMin).toBeGreaterThan(4);
  });
});
