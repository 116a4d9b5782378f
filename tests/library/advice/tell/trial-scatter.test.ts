import { describe, expect, it } from "vitest";
import truth from "../../../../data/make/truth.json";
import { trialScatter } from "../../../../kernel-lib/library/src/advice/tell/trial-scatter";
import { crispWindow } from "../../../../kernel-lib/library/src/advice/window/crisp-window";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const kitchen = loadKitchen();
const variantId = "beet-lentil";
const window = crispWindow({ kitchen, variantId, draws: 200 });
const scatter = trialScatter({ kitchen, window });
const of = (what: string) => scatter.find((one) => one.of === what) ?? scatter[0];

describe("trialScatter", () => {
  it("holds the scatter with which the demo's crisp times were drawn, in four of five variants at least, and is never far off", () => {
    let held = 0;
    // log times of sd 0.04, looks that stand in the log, and a thickness that five probes know to about 1.6 %
    const { crispTimeSd } = truth.noise;
    expect(kitchen.variants.length).toBe(5);
    for (const variant of kitchen.variants) {
      const own = crispWindow({ kitchen, variantId: variant.variantId, draws: 200 });
      const [{ of, sd, sd95 }] = trialScatter({ kitchen, window: own });
      expect(of).toBe("crispTime");
      const gaps = kitchen.trials
        .filter(
          (trial) => trial.variantId === variant.variantId && trial.crispMin !== null && trial.notCrispMin !== null,
        )
        .map((trial) => Number(trial.crispMin) - Number(trial.notCrispMin));
      const look = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length / Math.sqrt(12);
      const drawn = Math.hypot(crispTimeSd * own.crisp.min, look, 0.016 * own.crisp.min);
      if (sd95[0] < drawn && drawn < sd95[1]) held++;
      // the usual scatter, which counts as six trials, is larger than the demo's: its runs share nothing
      expect(sd / drawn).toBeGreaterThan(0.8);
      expect(sd / drawn).toBeLessThan(1.6);
    }
    expect(held).toBeGreaterThanOrEqual(4);
  });

  it("counts what is measured, and is surer with more of it", () => {
    const trials = kitchen.trials.filter((trial) => trial.variantId === variantId);
    expect(of("crispScore").measurements).toBe(
      trials.filter(({ crispScores, crispMin }) => crispScores.length > 0 && crispMin !== null).length,
    );
    const none = { ...kitchen, trials: [] };
    const usual = trialScatter({ kitchen: none, window: crispWindow({ kitchen: none, variantId, draws: 200 }) });
    for (const [at, { sd, sd95, measurements }] of usual.entries()) {
      expect(measurements).toBe(0);
      expect(sd95[1] / sd).toBeGreaterThan(scatter[at].sd95[1] / scatter[at].sd);
    }
  });
});
