import { describe, expect, it } from "vitest";
import { expectedYield, reheatYield } from "../../../../kernel-lib/library/src/advice/curve/reheat-yield";
import { fitCrispTimes, variantCrispTime } from "../../../../kernel-lib/library/src/advice/curve/variant-crisp-time";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";
import type { Kitchen, KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";
import { variantOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";

const kitchen = loadKitchen();
const crispTime = variantCrispTime({ kitchen, variantId: "beet-lentil" });
const yields = reheatYield({ kitchen, variantId: "beet-lentil", crispTime });

describe("reheatYield", () => {
  it("takes weighed trials that came out crisp, uncrowded, at the variant's own setting", () => {
    const { applianceId, setpointC } = variantOf(kitchen, "beet-lentil");
    expect(yields.trials.length).toBeGreaterThanOrEqual(10);
    for (const trial of yields.trials) {
      expect(trial).toMatchObject({ variantId: "beet-lentil", applianceId, setpointC });
      expect(trial.crispMin).not.toBeNull();
      expect(trial.loadFraction).toBeLessThanOrEqual(0.7);
    }
  });

  it("lets thin slabs and long reheats lose more", () => {
    expect(expectedYield(yields, { thicknessMm: 7, timeMin: 9 }).yieldPercent).toBeLessThan(
      expectedYield(yields, { thicknessMm: 12, timeMin: 13 }).yieldPercent,
    );
    expect(expectedYield(yields, { thicknessMm: 10, timeMin: 13 }).yieldPercent).toBeLessThan(
      expectedYield(yields, { thicknessMm: 10, timeMin: 10 }).yieldPercent,
    );
  });

  it("finds its own law again in kitchens that follow it, with 95 % intervals that hold one more trial", () => {
    const random = seededRandom(4);
    const crispMin = (thicknessMm: number): number => 2 + 0.75 * thicknessMm;
    const law = (thicknessMm: number, timeMin: number): number =>
      100 - 0.5 - (30 + 12 * (timeMin - crispMin(thicknessMm))) / thicknessMm;
    let held = 0;
    const kitchens = 200;
    for (let k = 0; k < kitchens; k++) {
      const trials = [6, 6, 8, 8, 10, 10, 12, 12, 14].map((thicknessMm, at): KitchenTrial => {
        const timeMin = crispMin(thicknessMm) + 2 * random.uniform();
        return {
          ...yields.trials[0],
          trialId: `S-${at}`,
          thicknessMm,
          timeMin,
          massBeforeG: 100,
          massAfterG: law(thicknessMm, timeMin) + random.normal(0, 0.4),
        };
      });
      const simulated: Kitchen = { ...kitchen, trials };
      const times = [6, 8, 10, 12, 14].map((thicknessMm, at) => {
        const timeMin = crispMin(thicknessMm) + (at % 2 === 0 ? 1e-6 : -1e-6);
        return { trialId: `T-${at}`, thicknessMm, lowerMin: timeMin, upperMin: timeMin, timeMin };
      });
      const fitted = reheatYield({
        kitchen: simulated,
        variantId: "beet-lentil",
        crispTime: fitCrispTimes({ times, notices: [], units: "metric" }),
      });
      const [low, high] = expectedYield(fitted, { thicknessMm: 9, timeMin: crispMin(9) + 1 }).interval95;
      const next = law(9, crispMin(9) + 1) + random.normal(0, 0.4);
      if (low <= next && next <= high) held++;
    }
    expect(held / kitchens).toBeGreaterThanOrEqual(0.9);
    expect(held / kitchens).toBeLessThanOrEqual(0.99);
  });
});
