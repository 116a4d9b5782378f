import { describe, expect, it } from "vitest";
import { nextTrial } from "../../../../kernel-lib/library/src/advice/trial/next-trial";
import { windowCalibration } from "../../../../kernel-lib/library/src/advice/window/window-calibration";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const kitchen = loadKitchen();

describe("nextTrial", () => {
  it("ranks trials by the doubt that they would leave", () => {
    const next = nextTrial({ kitchen, variantId: "beet-lentil" });
    const left = next.candidates.map((candidate) => candidate.doubtLeft);
    expect(left).toEqual(left.toSorted((a, b) => a - b));
    for (const share of left) {
      expect(share).toBeGreaterThan(0);
      expect(share).toBeLessThanOrEqual(1);
    }
    expect(left[0]).toBeLessThan(0.9);
    const [best] = next.candidates;
    expect(next.sentence).toContain(
      `${best.batchG} g on half sheet (${best.thicknessMm.toFixed(1)} mm), ${best.setpointC} °C in small-basket`,
    );
    expect(next.tasters).toBe(4);
    for (const { batchG } of next.candidates) expect(batchG % 10).toBe(0);
  });

  it("knows less with fewer trials", () => {
    const trials = kitchen.trials.filter((trial) => trial.variantId === "beet-lentil");
    const without = trials.slice(4).map((trial) => trial.trialId);
    const few = windowCalibration({ kitchen, variantId: "beet-lentil", without });
    const poor = nextTrial({ kitchen, variantId: "beet-lentil", calibration: few });
    const rich = nextTrial({ kitchen, variantId: "beet-lentil" });
    expect(poor.doubtNow).toBeGreaterThan(1.3 * rich.doubtNow);
  });
});
