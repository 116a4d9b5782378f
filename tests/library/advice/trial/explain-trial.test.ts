import { describe, expect, it } from "vitest";
import { explainTrial } from "../../../../kernel-lib/library/src/advice/trial/explain-trial";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen, KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";

const kitchen = loadKitchen();
const withTrial = (changed: Partial<KitchenTrial>): Kitchen => {
  const like = kitchen.trials.find((trial) => trial.trialId === "BL-08")!;
  return { ...kitchen, trials: [...kitchen.trials, { ...like, trialId: "X-1", ...changed }] };
};
const explained = (changed: Partial<KitchenTrial>) => explainTrial({ kitchen: withTrial(changed), trialId: "X-1" });
const failedClocks = (changed: Partial<KitchenTrial>): string[] =>
  explained(changed).clocks.flatMap((clock) => (clock.failed ? [clock.clock] : []));

describe("explainTrial", () => {
  it("finds nothing to explain in a good trial", () => {
    const good = explainTrial({ kitchen, trialId: "BL-08" });
    expect(good.failed).toBe(false);
    expect(good.change).toBe(null);
    expect(good.sentence).toContain("nothing failed");
    expect(good.caution).toContain("Local food codes");
  });

  it("names the clock, by how much, and the time that would have worked", () => {
    const early = explained({
      timeMin: 4,
      notCrispMin: 4,
      crispMin: null,
      coreC: 49,
      crispScores: [1, 0, 1],
      brownScores: [0, 0, 1],
      massBeforeG: null,
      massAfterG: null,
    });
    expect(early.clocks.filter((clock) => clock.failed).map((clock) => clock.clock)).toEqual(["core", "crust"]);
    const [core, crust] = early.clocks;
    expect(core.byMin).toBeCloseTo(early.window.core.min - 4, 9);
    expect(crust.byMin).toBeGreaterThan(core.byMin);
    expect(early.change?.success).toBeGreaterThan(0.9);
    expect(early.change?.sentence).toMatch(/^[\d.]+ min instead of 4, chance of success/);
  });

  it("tells too brown and too dry from scores and weights", () => {
    expect(
      failedClocks({
        timeMin: 20,
        brownScores: [8, 8, 7.5],
        massBeforeG: 100,
        massAfterG: 70,
        coreC: 99,
        crispScores: [9, 9, 9],
      }),
    ).toEqual(["browning", "drying"]);
    const dark = explained({ timeMin: 30, brownScores: [8, 8, 7.5], massBeforeG: null, massAfterG: null, coreC: 99 });
    expect(dark.clocks.find((clock) => clock.clock === "browning")?.byMin).toBeLessThan(0);
  });

  it("doubts a log whose mass and probes disagree, whose probes scatter, or whose readings surprise", () => {
    expect(explainTrial({ kitchen, trialId: "BL-14" }).doubts.join(" ")).toMatch(
      /the probes say .*; the scale goes with the probes/,
    );
    expect(explained({ thicknessSdMm: 1.5 }).doubts.join(" ")).toContain("the slab was uneven, or the probe slipped");
    const cold = explained({ coreC: 40 });
    expect(cold.doubts.join(" ")).toMatch(/core 40 °C where the other trials expect \d+\.\d °C/);
    expect(Math.abs(cold.surprises.find((surprise) => surprise.of === "core (°C)")!.deviations)).toBeGreaterThan(3);
  });

  it("does not let the trial explain itself", () => {
    const absurd = explained({ crispScores: [0, 0, 0], notCrispMin: 11, crispMin: null, timeMin: 11 });
    expect(absurd.window.opens.min).toBeCloseTo(explainTrial({ kitchen, trialId: "BL-08" }).window.opens.min, 0);
    expect(() => explainTrial({ kitchen, trialId: "X-9" })).toThrow("trialOf: trialId must be one of");
  });
});
