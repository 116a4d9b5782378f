import { describe, expect, it } from "vitest";
import { crispByShare } from "../../../../kernel-lib/library/src/advice/curve/crisp-by-share";
import { variantCrispTime } from "../../../../kernel-lib/library/src/advice/curve/variant-crisp-time";
import { isTooLittle } from "../../../../kernel-lib/library/src/check/too-little";
import { predictSlabTime } from "../../../../kernel-lib/library/src/fit/curve/predict-slab-time";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { normalQuantile } from "../../../../kernel-lib/library/src/statistics/distributions/normal-distribution";
import type { Kitchen, KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";

const demo = loadKitchen("data");
const { variantId, applianceId, setpointC } = demo.variants[0];
const like = demo.trials.find((trial) => trial.variantId === variantId) as KitchenTrial;

/** Standard normal draws, evenly spread over their law and in no order. */
function standardNormalDraws(count: number): number[] {
  return Array.from({ length: count }, (_, at) => normalQuantile((((at * 77) % count) + 0.5) / count));
}

/** A log whose slabs turn crisp at 1.1 min/mm, lognormal with a scatter of 8 %, seen at looks a quarter of a minute apart. */
function logOf(draws: readonly number[]): Kitchen {
  const trials = draws.map((draw, at): KitchenTrial => {
    const thicknessMm = [8, 10, 12, 14][at % 4];
    const crisp = 1.1 * thicknessMm * Math.exp(0.08 * draw);
    const notCrispMin = Math.floor(4 * crisp) / 4;
    return {
      ...like,
      trialId: `T-${at}`,
      applianceId,
      setpointC,
      loadFraction: 0.5,
      thicknessMm,
      notCrispMin,
      crispMin: notCrispMin + 0.25,
    };
  });
  return { ...demo, trials };
}

describe("crispByShare", () => {
  it("finds the time by which nine in ten are crisp: the median times e to 1.28 scatters", () => {
    const by = crispByShare({ kitchen: logOf(standardNormalDraws(200)), variantId, thicknessMm: 10 });
    const truth = 11 * Math.exp(1.2816 * 0.08);
    expect(Math.abs(by.timeMin / truth - 1)).toBeLessThan(0.03);
    expect(by.interval95[0]).toBeLessThan(truth);
    expect(by.interval95[1]).toBeGreaterThan(truth);
    expect(by.n).toBe(200);
  });

  it("agrees with the curve about one in two, and grows with the share", () => {
    const kitchen = logOf(standardNormalDraws(60));
    const half = crispByShare({ kitchen, variantId, thicknessMm: 11, share: 0.5 });
    const curve = predictSlabTime(variantCrispTime({ kitchen, variantId }).fit, 11).timeMin;
    expect(half.timeMin / curve).toBeCloseTo(1, 1);
    expect(crispByShare({ kitchen, variantId, thicknessMm: 11, share: 0.99 }).timeMin).toBeGreaterThan(half.timeMin);
  });

  it("says what to log where looks are too far apart to show a scatter, or there are none", () => {
    const exact = logOf(Array.from({ length: 12 }, () => 0));
    for (const kitchen of [exact, { ...demo, trials: [] }, { ...demo, trials: exact.trials.slice(0, 2) }])
      expect(() => crispByShare({ kitchen, variantId, thicknessMm: 10 })).toThrow(
        expect.toSatisfy((error) => isTooLittle(error) && /\blog|reheat\b/.test(error.message)),
      );
  });

  it("refuses a share that is none", () => {
    for (const share of [0, 1, -1, Number.NaN])
      expect(() => crispByShare({ kitchen: demo, variantId, thicknessMm: 10, share })).toThrow(
        "must be above 0 and below 1",
      );
  });
});
