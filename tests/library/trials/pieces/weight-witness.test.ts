import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";
import { panOf, trialOf, variantOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { type WeightWitness, weightWitness } from "../../../../kernel-lib/library/src/trials/pieces/weight-witness";
import { thicknessOfTrial } from "../../../../kernel-lib/library/src/trials/thickness-of-trial";
import { type Slip, weighedTrials } from "./kitchen-scale";

const kitchen = loadKitchen();
const own = { variantId: "beet-lentil", panId: "half-sheet" };

function witness(trial: KitchenTrial): WeightWitness | null {
  const { densityKgM3 } = variantOf(kitchen, trial.variantId);
  const { massMm } = thicknessOfTrial({ trial, pan: panOf(kitchen, trial.panId), densityKgM3 });
  return weightWitness({ kitchen, trial, massMm: massMm as number });
}

const shareOf = (side: WeightWitness["goesWith"], slip: Slip): number => {
  const sides = weighedTrials(kitchen, 400, 5, slip).map((trial) => witness(trial)?.goesWith);
  return sides.filter((one) => one === side).length / sides.length;
};

describe("weightWitness", () => {
  it("goes with the probes where the batch was written wrong by a quarter, nearly never with the batch", () => {
    for (const batch of [0.75, 1.3]) {
      expect(shareOf("probes", { ...own, batch })).toBeGreaterThan(0.95);
      expect(shareOf("batch", { ...own, batch })).toBeLessThan(0.01);
    }
  });

  it("goes with the batch where the probes were wrong by a quarter, nearly never with the probes", () => {
    for (const probes of [0.75, 1.3]) {
      expect(shareOf("batch", { ...own, probes })).toBeGreaterThan(0.95);
      expect(shareOf("probes", { ...own, probes })).toBeLessThan(0.01);
    }
  });

  it("agrees with neither where the pieces are half as large again", () => {
    expect(shareOf("neither", { ...own, batch: 0.8, cutArea: 1.6 })).toBeGreaterThan(0.95);
  });

  it("cannot tell where the two are all but one", () => {
    expect(shareOf("either", own)).toBeGreaterThan(0.8);
  });

  it("is silent without weights", () => {
    expect(witness({ ...trialOf(kitchen, "BL-14"), pieces: null })).toBeNull();
  });
});
