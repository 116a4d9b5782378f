import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { observationOf, windowCalibration } from "../../../../kernel-lib/library/src/advice/window/window-calibration";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const kitchen = loadKitchen();
const truth = JSON.parse(readFileSync("data/make/truth.json", "utf8"));

describe("windowCalibration", () => {
  it.each(kitchen.variants.map((variant) => variant.variantId))(
    "settles on the demo kitchen's log of %s without contradiction, and finds its unevenness again",
    (variantId) => {
      const calibration = windowCalibration({ kitchen, variantId });
      expect(calibration.converged).toBe(true);
      expect(calibration.contradictions).toEqual([]);
      expect(Math.abs(calibration.unevenness - truth.noise.unevennessSd)).toBeLessThan(0.01);
    },
  );

  it("leaves trials out when asked, and says when there is no such trial", () => {
    const all = windowCalibration({ kitchen, variantId: "beet-lentil" });
    const fewer = windowCalibration({ kitchen, variantId: "beet-lentil", without: ["BL-14"] });
    expect(fewer.n).toBe(all.n - 1);
    expect(() => windowCalibration({ kitchen, variantId: "beet-lentil", without: ["BL-99"] })).toThrow(
      'must name trials of the kitchen, got "BL-99"',
    );
    expect(() => windowCalibration({ kitchen, variantId: "soup" })).toThrow("must be one of beet-lentil");
  });
});

describe("windowCalibration with borrow", () => {
  const trials = kitchen.trials.filter((trial) => trial.variantId === "beet-lentil");
  const without = trials.slice(1).map((trial) => trial.trialId);
  const coefficient = (borrow: boolean, applianceId: string) =>
    windowCalibration({ kitchen, variantId: "beet-lentil", without, borrow }).constants.find(
      ({ name }) => name === `coefficient:${applianceId}`,
    )!;

  it("knows an appliance from the other variants when this one has hardly a trial", () => {
    for (const applianceId of ["small-basket", "fan-oven"]) {
      const { coefficientWm2K } = truth.appliances[applianceId];
      const alone = coefficient(false, applianceId);
      const borrowed = coefficient(true, applianceId);
      const width = ({ interval95 }: typeof alone): number => Math.log(interval95[1] / interval95[0]);
      expect(width(borrowed)).toBeLessThan((applianceId === "fan-oven" ? 1 / 3 : 0.95) * width(alone));
      expect(Math.abs(Math.log(borrowed.estimate / coefficientWm2K))).toBeLessThan(0.25);
      expect(borrowed.prior.from).toBe(
        "the trials of turkey-sage, pollock-dill, chickpea-carrot, corn-puff in this kitchen",
      );
    }
  });
});

describe("observationOf", () => {
  it("turns weights into a loss and a flip into a turn", () => {
    const trial = kitchen.trials[0];
    const seen = observationOf(kitchen, { ...trial, massBeforeG: 100, massAfterG: 88, flipMin: 4 });
    expect(seen.lossPercent).toBeCloseTo(12, 10);
    expect(seen.turned).toBe(true);
    expect(seen.session).toBe(trial.date);
    expect(seen.sidesMm![0]).toBeGreaterThan(30);
    expect(observationOf(kitchen, { ...trial, massAfterG: null }).lossPercent).toBe(null);
  });

  it("takes a core alone as the highest after two minutes, and with a rested one beside it as read at taking out", () => {
    const trial = kitchen.trials[0];
    expect(observationOf(kitchen, { ...trial, coreC: 80 })).toMatchObject({ coreC: null, restedCoreC: 80 });
    expect(observationOf(kitchen, { ...trial, coreC: 76, restedCoreC: 80 })).toMatchObject({
      coreC: 76,
      restedCoreC: 80,
    });
  });
});
