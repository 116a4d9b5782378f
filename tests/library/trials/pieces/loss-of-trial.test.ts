import { describe, expect, it } from "vitest";
import { windowCalibration } from "../../../../kernel-lib/library/src/advice/window/window-calibration";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";
import { trialOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { lossOfTrial } from "../../../../kernel-lib/library/src/trials/pieces/loss-of-trial";

const kitchen = loadKitchen();
const trial = { ...trialOf(kitchen, "PD-02"), massBeforeG: 200, massAfterG: 180 };

describe("lossOfTrial", () => {
  it("is of the mass before, whatever the pieces ought to weigh", () => {
    expect(lossOfTrial(trial)).toBeCloseTo(10, 12);
    expect(lossOfTrial({ ...trial, pieces: 60 })).toBeCloseTo(10, 12);
    expect(lossOfTrial({ ...trial, massAfterG: 202 })).toBeCloseTo(-1, 12);
  });

  it("is not known without both weights, nor when one is a slip", () => {
    expect(lossOfTrial({ ...trial, massAfterG: null })).toBeNull();
    expect(lossOfTrial({ ...trial, massBeforeG: 2000 })).toBeNull();
    expect(lossOfTrial({ ...trial, massAfterG: 101 })).not.toBeNull();
  });

  it("keeps a weight that is a slip out of the calibration", () => {
    const change = (changed: Partial<KitchenTrial>): typeof kitchen => ({
      ...kitchen,
      trials: kitchen.trials.map((one) => (one.trialId === "PD-02" ? { ...one, ...changed } : one)),
    });
    const slipped = windowCalibration({
      kitchen: change({ massBeforeG: 2000, massAfterG: 185 }),
      variantId: "pollock-dill",
    });
    const unknown = windowCalibration({
      kitchen: change({ massBeforeG: null, massAfterG: null }),
      variantId: "pollock-dill",
    });
    expect(slipped).toEqual(unknown);
  });
});
