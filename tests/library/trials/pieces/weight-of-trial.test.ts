import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";
import { trialOf, variantOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import {
  isUsual,
  type WeightOfTrial,
  weightOfTrial,
} from "../../../../kernel-lib/library/src/trials/pieces/weight-of-trial";

const kitchen = loadKitchen();
const weigh = (trialId: string, changed: Partial<KitchenTrial> = {}): WeightOfTrial => {
  const weight = weightOfTrial({ kitchen, trial: { ...trialOf(kitchen, trialId), ...changed } });
  if (weight === null) throw new Error("not weighed");
  return weight;
};

describe("weightOfTrial", () => {
  it("multiplies the logged sides with thickness and density, and coats the piece", () => {
    const { densityKgM3 } = variantOf(kitchen, "beet-lentil");
    const { bareG, calculatedG, sidesMm } = weigh("BL-01", { pieceLengthMm: 50, pieceWidthMm: 30, thicknessMm: 10 });
    expect(sidesMm).toEqual([50, 30]);
    expect(bareG).toBeCloseTo(50 * 30 * 10 * densityKgM3 * 1e-6, 9);
    // spray oil: 2.5 % at 2.7 cm²/g, on a piece of 46 cm²
    expect(calculatedG).toBeCloseTo(bareG * (1 + (0.025 * (46 / bareG)) / 2.7), 9);
  });

  it("takes the cut of the pan where only one side was logged", () => {
    const none = weigh("BL-01", { pieceLengthMm: null, pieceWidthMm: null });
    expect(weigh("BL-01", { pieceLengthMm: 50, pieceWidthMm: null })).toEqual(none);
    expect(weigh("BL-01", { pieceLengthMm: null, pieceWidthMm: 30 })).toEqual(none);
  });

  it("takes the mass of a well's batter in wells", () => {
    const trial = trialOf(kitchen, "CP-01");
    const { densityKgM3 } = variantOf(kitchen, "corn-puff");
    const { bareG, calculatedG } = weigh("CP-01");
    const [lowerMm, upperMm] = [16, 16 + trial.thicknessMm * Math.tan((18 * Math.PI) / 180)];
    const frustumMm3 = (Math.PI * trial.thicknessMm * (lowerMm ** 2 + lowerMm * upperMm + upperMm ** 2)) / 3;
    expect(bareG).toBeCloseTo(frustumMm3 * densityKgM3 * 1e-6, 6);
    expect(calculatedG).toBe(bareG);
  });

  it("finds every piece of the demo where the cut puts it", () => {
    const weights = kitchen.trials.map(({ trialId }) => ({ trialId, ...weigh(trialId) }));
    expect(weights.filter((one) => !isUsual(one)).map(({ trialId }) => trialId)).toEqual([]);
    const logs = weights.map(({ ratio }) => Math.log(ratio));
    expect(Math.abs(logs.reduce((sum, one) => sum + one, 0) / logs.length)).toBeLessThan(0.02);
  });

  it("lets a piece weigh less by what heat before the freezer took, and not more", () => {
    const [raw, parCooked, cooked] = ["BL-01", "TS-01", "CP-01"].map((trialId) => weigh(trialId).usual);
    expect(raw[0] * raw[1]).toBeCloseTo(1, 12);
    expect(parCooked[0] * parCooked[1]).toBeCloseTo(0.82, 12);
    expect(cooked[0] * cooked[1]).toBeCloseTo(0.63, 12);
    expect(cooked[1]).toBeLessThan(1.2);
  });

  it("doubts more on another pan than the variant's, with few pieces, and with few probes", () => {
    const { doubt } = weigh("BL-01");
    expect(weigh("BL-01", { panId: "quarter-sheet" }).doubt).toBeGreaterThan(doubt);
    expect(weigh("BL-01", { pieces: 1 }).doubt).toBeGreaterThan(doubt);
    expect(weigh("BL-01", { thicknessSdMm: null }).doubt).toBeGreaterThan(doubt);
  });

  it("is silent where nothing was weighed or counted", () => {
    for (const changed of [{ pieces: null }, { massBeforeG: null, massAfterG: null }])
      expect(weightOfTrial({ kitchen, trial: { ...trialOf(kitchen, "BL-01"), ...changed } })).toBeNull();
  });
});
