import { describe, expect, it } from "vitest";
import { benchSheet } from "../../../../kernel-lib/library/src/advice/trial/bench-sheet";
import { planMorning } from "../../../../kernel-lib/library/src/advice/trial/plan-morning";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen } from "../../../../kernel-lib/library/src/trials/kitchen";

const kitchen = loadKitchen();
const variantId = "turkey-sage";

function after(count: number): Kitchen {
  const own = kitchen.trials.filter((trial) => trial.variantId === variantId);
  return { ...kitchen, trials: [...kitchen.trials.filter((trial) => !own.includes(trial)), ...own.slice(0, count)] };
}

const morning = planMorning({ kitchen: after(0), variantId, trials: 6 });

describe("planMorning", () => {
  it("can be run in a morning: two slabs at most, no more pieces than they give, the dial rising on each", () => {
    expect(morning.trials).toHaveLength(6);
    expect(morning.slabs.length).toBeLessThanOrEqual(2);
    for (const [at, slab] of morning.slabs.entries()) {
      const own = morning.trials.filter((trial) => trial.slab === at);
      expect(own.reduce((sum, { pieces }) => sum + pieces, 0)).toBeLessThanOrEqual(slab.pieces);
      const settings = own.map(({ setpointC }) => setpointC);
      expect(settings).toEqual(settings.toSorted((a, b) => a - b));
      for (const { panId, batchG, thicknessMm } of own)
        expect([panId, batchG, thicknessMm]).toEqual([slab.panId, slab.batchG, slab.thicknessMm]);
    }
    expect(morning.trials.map(({ chosen }) => chosen).toSorted()).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it("is a sound first morning where nothing was logged: two thicknesses, cores expected low and high, all probed", () => {
    const [thin, thick] = morning.slabs.map(({ thicknessMm }) => thicknessMm);
    expect(thick / thin).toBeGreaterThan(1.15);
    expect(morning.trials.every(({ probe }) => probe)).toBe(true);
    const reasons = morning.trials.map(({ reason }) => reason).join(" ");
    expect(reasons).toContain("a core read while it climbs");
    expect(reasons).toContain("a core at its limit");
    expect(morning.sentence).toContain(
      "read the core of the thickest piece as soon as they are out and at its highest within two minutes; below 74 °C put them back or throw them away",
    );
    expect(morning.sentence).toContain(morning.cautions[0]);
  });

  it("is worth more together than its first trial, and takes less than six apart", () => {
    expect(morning.gain).toBe(morning.gains[5]);
    expect(morning.gain).toBeGreaterThan(morning.gains[0] + 0.02);
    const cooking = morning.trials.reduce((sum, { timeMin }) => sum + timeMin, 0);
    expect(morning.minutes).toBeGreaterThan(cooking + 6 * 10);
    expect(morning.minutes).toBeLessThan(cooking + 6 * 40);
    expect(morning.gramsMix).toBe(morning.slabs.reduce((sum, { batchG }) => sum + batchG, 0));
  });

  it("goes onto a bench sheet as it is", () => {
    expect(benchSheet({ kitchen, trials: morning.trials }).trialIds).toHaveLength(6);
  });

  it("does without what the kitchen may not use today", () => {
    const without = ["half-sheet", "probe"];
    const poor = planMorning({ kitchen: after(4), variantId, trials: 2, without, setpointsC: [195] });
    for (const { panId, probe } of poor.trials) {
      expect(panId).not.toBe("half-sheet");
      expect(probe).toBe(false);
    }
    expect(poor.sentence).toContain("nobody tastes them, as their core is not read");
    expect(poor.sentence).not.toContain("score crispness");
  });

  it("says in a sentence what cannot be asked", () => {
    expect(() => planMorning({ kitchen, variantId, trials: 0 })).toThrow(
      "planMorning: trials must be a whole number from 1 to 12, got 0",
    );
    expect(() => planMorning({ kitchen: after(2), variantId, trials: 1, without: ["big pan"] })).toThrow(
      /^nextTrial: without must name a pan of the kitchen or the probe \(.*, probe\), got "big pan"$/,
    );
    const without = kitchen.pans.filter(({ shape }) => shape === "rectangle").map(({ id }) => id);
    expect(() => planMorning({ kitchen: after(2), variantId, trials: 2, without })).toThrow(
      /^Without three-quarter-sheet, half-sheet, .* no pan is left that takes turkey and sage sticks at a thickness worth trying: allow one of them, or add a pan to pans\.csv\.$/,
    );
  });
});
