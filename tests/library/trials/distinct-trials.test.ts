import { crispWindow, loadKitchen } from "slabwright";
import { cardEvidence, windowCalibration } from "slabwright/advice";
import { describe, expect, it } from "vitest";
import { hasImpossibleCore, highestCore } from "../../../kernel-lib/library/src/trials/core-of-trial";
import { distinctTrials } from "../../../kernel-lib/library/src/trials/distinct-trials";

const kitchen = loadKitchen();
const [first, ...others] = kitchen.trials.filter(({ variantId }) => variantId === "pollock-dill").slice(0, 4);
const copies = (count: number) =>
  Array.from({ length: count }, (_, at) => ({ ...others[0], trialId: `COPY-${at}`, note: `copy ${at}` }));

describe("distinctTrials", () => {
  it("counts a copied row once, whatever it is called and remarked, and every trial that differs in a measurement", () => {
    expect(distinctTrials([first, ...others, ...copies(5)])).toEqual([first, ...others]);
    const other = { ...others[0], trialId: "X", timeMin: others[0].timeMin + 0.5 };
    expect(distinctTrials([others[0], other])).toEqual([others[0], other]);
    expect(distinctTrials(kitchen.trials)).toEqual(kitchen.trials);
  });

  it("keeps a card from becoming ready, and a safe time from moving, by copies", () => {
    const asked = (trials: typeof kitchen.trials) => {
      const young = { ...kitchen, trials };
      const window = crispWindow({ kitchen: young, variantId: "pollock-dill" });
      return {
        ready: cardEvidence({ kitchen: young, window }).map(({ name, met, found }) => [name, met, found]),
        safe: window.recommended.cardMin,
      };
    };
    const real = [first, ...others];
    expect(asked([...real, ...copies(9)])).toEqual(asked(real));
  });
});

describe("hasImpossibleCore", () => {
  const hot = { ...others[0], trialId: "HOT", coreC: 112, restedCoreC: null };

  it("is a core that boiled dry or stands in another unit", () => {
    expect(
      [hot, { ...hot, coreC: 103 }, { ...hot, coreC: null }, { ...hot, coreC: 90, restedCoreC: 110 }].map(
        hasImpossibleCore,
      ),
    ).toEqual([true, false, false, true]);
    expect(highestCore({ ...hot, coreC: 70, restedCoreC: 74 })).toBe(74);
  });

  it("tells the clocks nothing, counts as no hot core, and is named before a card", () => {
    const trials = kitchen.trials.map((trial) =>
      trial.trialId === others[0].trialId ? { ...trial, coreC: 112 } : trial,
    );
    const without = kitchen.trials.map((trial) =>
      trial.trialId === others[0].trialId ? { ...trial, coreC: null } : trial,
    );
    const calibrated = (of: typeof trials) =>
      windowCalibration({ kitchen: { ...kitchen, trials: of }, variantId: "pollock-dill" }).mode;
    expect(calibrated(trials)).toEqual(calibrated(without));
    const wrong = { ...kitchen, trials };
    const evidence = cardEvidence({
      kitchen: wrong,
      window: crispWindow({ kitchen: wrong, variantId: "pollock-dill" }),
    });
    expect(evidence.find(({ name }) => name === "no contradiction")).toMatchObject({
      met: false,
      missing: "a core reading to correct",
      found: expect.stringContaining(`${others[0].trialId} has a core of 112 °C`),
    });
  });
});
