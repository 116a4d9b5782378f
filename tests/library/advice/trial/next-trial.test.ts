import { describe, expect, it } from "vitest";
import { firstMorning } from "../../../../kernel-lib/library/src/advice/trial/first-morning";
import { nextTrial } from "../../../../kernel-lib/library/src/advice/trial/next-trial";
import { windowCalibration } from "../../../../kernel-lib/library/src/advice/window/window-calibration";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { massText } from "../../../../kernel-lib/library/src/units/mass-text";

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
    expect(next.sentence).toContain(`Next: ${massText(best.batchG, "metric")} of mix on the half sheet, `);
    expect(next.sentence).toContain(` in the small basket; look at `);
    expect(next.sentence).toContain("have your 4 tasters score them");
    expect(next.tasters).toBe(4);
    for (const { batchG, setpointC } of next.candidates) {
      expect(batchG % 10).toBe(0);
      expect(setpointC % 5).toBe(0);
    }
  });

  it("spreads what its own pan is too shallow for on another of its kind", () => {
    const pans = kitchen.pans.map((pan) => (pan.id === "half-sheet" ? { ...pan, depthMm: 11 } : pan));
    const { candidates } = nextTrial({ kitchen: { ...kitchen, pans }, variantId: "beet-lentil" });
    const deep = candidates.filter(({ panId }) => panId !== "half-sheet");
    expect(deep).toHaveLength(9);
    for (const { thicknessMm } of deep) expect(thicknessMm).toBeGreaterThan(11);
  });

  it("is the first morning where nothing was logged", () => {
    const empty = { ...kitchen, trials: kitchen.trials.filter((trial) => trial.variantId !== "beet-lentil") };
    const next = nextTrial({ kitchen: empty, variantId: "beet-lentil" });
    expect(next.sentence).toMatch(/^No trial of beet and lentil bites is logged yet\. The first morning with /);
    expect(next.steps).toEqual(firstMorning({ kitchen: empty, variantId: "beet-lentil" }).steps);
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
