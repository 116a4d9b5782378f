import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";
import { panOf, trialOf, variantOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { trialNotices } from "../../../../kernel-lib/library/src/trials/pieces/trial-notices";
import { type WeightOfTrial, weightOfTrial } from "../../../../kernel-lib/library/src/trials/pieces/weight-of-trial";
import { thicknessOfTrial } from "../../../../kernel-lib/library/src/trials/thickness-of-trial";
import { storedWorlds } from "../../../worlds/stored-world";
import { worldKitchen } from "../../../worlds/world-kitchen";
import { weighedTrials } from "./kitchen-scale";

const kitchen = loadKitchen();
const noticesOf = (trials: readonly KitchenTrial[], units = kitchen.units): readonly string[] =>
  trialNotices({ kitchen: { ...kitchen, units }, trials });
const COUNT = 400;
const seed = Number(process.env.PROPERTY_SEED ?? 11);

/** Each trial by itself, so that none is folded into the line of several. */
const noticed = (trials: readonly KitchenTrial[]): number =>
  trials.filter((trial) => noticesOf([trial]).length > 0).length / trials.length;

/** Variants whose pieces go into the freezer as cut and coated, on their own pan and on a smaller one. */
const RAW = ["beet-lentil", "pollock-dill", "chickpea-carrot"].flatMap((variantId) =>
  ["half-sheet", "quarter-sheet"].map((panId) => ({ variantId, panId })),
);

describe("trialNotices", () => {
  it.each(RAW)("keeps still on 99 of 100 consistent trials of $variantId on $panId", (slip) => {
    const trials = weighedTrials(kitchen, COUNT, seed, slip).map((trial) => ({ ...trial, batchG: null }));
    expect(noticed(trials)).toBeLessThanOrEqual(0.01);
  });

  it.each(RAW)("finds weights ten times, 28.35 times and 16 times off, of $variantId on $panId", (slip) => {
    const trials = weighedTrials(kitchen, 100, seed, slip).map((trial) => ({ ...trial, batchG: null }));
    for (const factor of [10, 28.35, 16, 453.6]) {
      for (const times of [factor, 1 / factor]) {
        const slipped = trials.map((trial) => ({
          ...trial,
          massBeforeG: times * (trial.massBeforeG as number),
          massAfterG: times * (trial.massAfterG as number),
        }));
        expect(noticed(slipped), `${times} times`).toBe(1);
      }
    }
    expect(noticed(trials.map((trial) => ({ ...trial, pieces: 10 * (trial.pieces as number) })))).toBe(1);
  });

  it.each(RAW)("finds pieces cut 1.5 times too large or too small in 99 of 100, of $variantId on $panId", (slip) => {
    for (const cutArea of [1.5, 1 / 1.5]) {
      const trials = weighedTrials(kitchen, COUNT, seed, { ...slip, cutArea });
      expect(noticed(trials.map((trial) => ({ ...trial, batchG: null })))).toBeGreaterThanOrEqual(0.99);
    }
  });

  it("keeps still on all trials of the worlds, whose pieces another simulator weighed", () => {
    const heard = storedWorlds().flatMap((world) => {
      const { trials, ...rest } = worldKitchen(world, world.trials.length);
      return trialNotices({ kitchen: rest, trials });
    });
    expect(heard).toEqual([]);
  });

  it("says with whom the scale goes where probes and batch mass disagree", () => {
    expect(noticesOf([trialOf(kitchen, "BL-14")])).toEqual([
      expect.stringMatching(
        /probes say 8\.0 mm.*; the scale goes with the probes: 14\.6 g a piece, where the probes make 14\.5 g and the batch 10\.8 g$/,
      ),
    ]);
  });

  describe("where probes and batch mass disagree to the same side", () => {
    // by probes over batch mass; what was weighed of the pieces is left out
    const off = (...ratios: number[]): readonly KitchenTrial[] => {
      const trial = trialOf(kitchen, "BL-14");
      const { massMm } = thicknessOfTrial({
        trial,
        pan: panOf(kitchen, trial.panId),
        densityKgM3: variantOf(kitchen, trial.variantId).densityKgM3,
      });
      return ratios.map((ratio, at) => {
        const thicknessMm = ratio * (massMm as number);
        return {
          ...trial,
          trialId: `W-${at}`,
          probesMm: [thicknessMm],
          thicknessMm,
          massBeforeG: null,
          massAfterG: null,
        };
      });
    };

    it("says it once of five and more that are most of the variant's", () => {
      expect(noticesOf(off(0.83, 0.85, 0.88, 0.84, 0.86))).toEqual([
        "all 5 trials of beet-lentil with probes and a batch mass: the probes say 12 to 17 % less than the batch mass makes; " +
          "as it is alike in so many, check how the batch is weighed, the sizes of the pan, how the probes are read and the air in the mix",
      ]);
      const [several, ...alone] = noticesOf(off(1.2, 1.2, 1.2, 0.8, 1.2, 1.2, 1, 1));
      expect(several).toMatch(
        /^5 of 8 trials of beet-lentil .* the probes say 20 % more than .*\(W-0, W-1, W-2, W-4 and W-5\)/,
      );
      expect(alone).toEqual([expect.stringMatching(/^trial W-3: .*-20 %/)]);
    });

    it("says each by itself where they are fewer, or the exception", () => {
      expect(noticesOf(off(0.8, 0.8, 0.8, 0.8, 1.2))).toHaveLength(5);
      expect(noticesOf(off(0.8, 0.8, 0.8, 0.8, 0.8, 1, 1, 1, 1, 1))).toHaveLength(1);
      expect(noticesOf(off(0.8, 0.8, 0.8, 0.8, 0.8, 1, 1, 1, 1, 1, 1))).toHaveLength(5);
    });

    it("counts with whom the scale goes", () => {
      const trial = trialOf(kitchen, "BL-14");
      const five = Array.from({ length: 5 }, (_, at) => ({ ...trial, trialId: `W-${at}` }));
      expect(noticesOf(five)).toEqual([expect.stringMatching(/; the scale goes with the probes in 5$/)]);
    });
  });

  it("speaks of one slip in the kitchen's units, and asks what it may have been", () => {
    const trial = trialOf(kitchen, "BL-02");
    const [metric, ...more] = noticesOf([{ ...trial, pieces: 10 * (trial.pieces as number) }], "metric");
    expect(more).toEqual([]);
    expect(metric).toMatch(
      /^trial BL-02: \d+ pieces weigh [\d.]+ g, [\d.]+ g each: 0\.\d+ times the [\d.]+ g that 41 × 41 mm of 6\.0 mm make, coated; is a digit missing in the weight, or one too many in the pieces\?/,
    );
    const ounces = { massBeforeG: 28.35 * (trial.massBeforeG as number), massAfterG: null };
    const [us] = noticesOf([{ ...trial, ...ounces }], "us");
    expect(us).toMatch(
      / oz each: 28 times the .* oz that .* in of .* make, coated; are these grams under an ounce heading\?/,
    );
  });

  it("asks whether coated pieces were weighed bare", () => {
    const trial = trialOf(kitchen, "CC-01");
    const [notice] = noticesOf([{ ...trial, massBeforeG: 0.77 * (trial.massBeforeG as number), massAfterG: null }]);
    expect(notice).toMatch(/were they weighed bare\?/);
  });

  it("tells odd weights of one variant that are alike in one line", () => {
    const slip = { variantId: "beet-lentil", panId: "half-sheet", cutArea: 1.6 };
    const trials = weighedTrials(kitchen, 6, seed, slip).map((trial) => ({ ...trial, batchG: null }));
    const notices = noticesOf(trials);
    expect(notices).toHaveLength(1);
    expect(notices[0]).toMatch(
      /^trials W-0, W-1, .* and W-5: pieces weigh 1\.\d+ to 1\.\d+ times what the cut of beet-lentil/,
    );
  });

  it("keeps odd weights apart that are not alike: those more than a quarter above the lightest", () => {
    const trial = trialOf(kitchen, "BL-02");
    const { calculatedG } = weightOfTrial({ kitchen, trial }) as WeightOfTrial;
    const odd = (...ratios: number[]): readonly string[] =>
      noticesOf(
        ratios.map((ratio, at) => ({
          ...trial,
          trialId: `W-${at}`,
          massBeforeG: ratio * calculatedG * (trial.pieces as number),
          massAfterG: null,
        })),
      ).map((notice) => notice.replace(/:.*/, ""));
    expect(odd(8, 9, 9.9)).toEqual(["trials W-0, W-1 and W-2"]);
    expect(odd(8, 9, 10.1)).toEqual(["trial W-0", "trial W-1", "trial W-2"]);
    expect(odd(0.1, 8, 9, 9.9)).toEqual(["trial W-0", "trials W-1, W-2 and W-3"]);
  });

  it("names a loss that no piece survives, and keeps still on the largest that is none", () => {
    const trial = trialOf(kitchen, "BL-02");
    const after = (share: number): KitchenTrial => ({ ...trial, massAfterG: share * (trial.massBeforeG as number) });
    expect(noticesOf([after(0.08)])).toEqual([
      expect.stringMatching(/after would be 92 % lost; one of the two is a slip/),
    ]);
    expect(noticesOf([after(0.55)])).toEqual([]);
  });

  it("leaves a variant that its pan cannot be cut for to whoever cuts it", () => {
    const variants = kitchen.variants.map((variant) => ({ ...variant, trimMm: 400 }));
    const trials = [trialOf(kitchen, "BL-02")];
    expect(trialNotices({ kitchen: { ...kitchen, variants }, trials })).toEqual([]);
  });
});
