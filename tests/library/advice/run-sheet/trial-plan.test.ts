import { describe, expect, it } from "vitest";
import { planText, readPlan } from "../../../../kernel-lib/library/src/advice/run-sheet/plan-text";
import { trialPlan } from "../../../../kernel-lib/library/src/advice/run-sheet/trial-plan";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const kitchen = loadKitchen();
const today = "2026-05-04";
const trials = [7, 8, 9, 10, 11, 12, 13, 14].map((timeMin) => ({
  variantId: "beet-lentil",
  timeMin,
  looksMin: [timeMin - 2, timeMin],
  thicknessMm: 8.123456789,
  loadFraction: 0.6,
  purpose: "to see",
}));

describe("trialPlan", () => {
  it("gives every trial a free name, a morning and what the variant has, in the order given", () => {
    const plan = trialPlan({ kitchen, name: "monday", trials, today });
    expect(plan.trials.map(({ timeMin }) => timeMin)).toEqual([7, 8, 9, 10, 11, 12, 13, 14]);
    expect(plan.trials.map(({ session }) => session)).toEqual([1, 1, 1, 1, 1, 1, 2, 2]);
    const logged = new Set(kitchen.trials.map(({ trialId }) => trialId));
    expect(new Set(plan.trials.map(({ trialId }) => trialId)).size).toBe(8);
    expect(plan.trials.some(({ trialId }) => logged.has(trialId))).toBe(false);
    expect(plan.trials[0]).toMatchObject({ panId: "half-sheet", applianceId: "small-basket", setpointC: 200, run: 1 });
  });

  it("shuffles within mornings by a seed, and gives the same plan again to the digit", () => {
    const made = (seed: number) => trialPlan({ kitchen, name: "monday", trials, today, seed });
    expect(planText(made(5))).toBe(planText(made(5)));
    expect(made(5).trials.map(({ timeMin }) => timeMin)).not.toEqual(made(6).trials.map(({ timeMin }) => timeMin));
    const firsts = made(5)
      .trials.filter(({ session }) => session === 1)
      .map(({ timeMin }) => timeMin);
    expect([...firsts].sort((a, b) => Number(a) - Number(b))).toEqual([7, 8, 9, 10, 11, 12]);
    expect(made(5).trials.map(({ run }) => run)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  it("reads back every number, and leaves out what is no part of a plan", () => {
    const candidates = trials.map((trial) => ({ ...trial, gain: 0.03, minutes: 40, probe: true }));
    const plan = trialPlan({ kitchen, name: "monday", trials: candidates, today, seed: 3 });
    expect(readPlan(planText(plan), "plans/monday.json")).toEqual(plan);
    expect(planText(plan)).not.toContain("gain");
  });

  it("takes no name that another plan holds, and names every variant's trials in its own way", () => {
    const asked = [{ variantId: "beet-lentil" }, { variantId: "turkey-sage" }];
    const free = trialPlan({ kitchen, name: "monday", trials: asked, today });
    expect(free.trials.map(({ trialId }) => trialId)).toEqual(["BL-33", "TS-20"]);
    const taken = ["BL-33", "BL-34", "TS-20"];
    const next = trialPlan({ kitchen, name: "tuesday", trials: asked, today, taken });
    expect(next.trials.map(({ trialId }) => trialId)).toEqual(["BL-35", "TS-21"]);
  });

  it("refuses a name that is no file's, a trial's name that is taken, and what is not the kitchen's", () => {
    expect(() => trialPlan({ kitchen, name: "../x", trials, today })).toThrow("name must be up to 60 letters");
    expect(() => trialPlan({ kitchen, name: "x", trials: [], today })).toThrow("trials must hold a trial to run");
    const taken = [{ variantId: "beet-lentil", trialId: "BL-01" }];
    expect(() => trialPlan({ kitchen, name: "x", trials: taken, today })).toThrow(
      "must be a name that no other trial has",
    );
    expect(() =>
      trialPlan({ kitchen, name: "x", trials: [{ variantId: "beet-lentil", panId: "moon" }], today }),
    ).toThrow("moon");
  });
});

describe("readPlan", () => {
  it("names file and place of what is wrong", () => {
    const plan = trialPlan({ kitchen, name: "monday", trials, today });
    const broken = (change: (json: { trials: Record<string, unknown>[]; kind?: string }) => void): string => {
      const json = JSON.parse(planText(plan));
      change(json);
      return JSON.stringify(json);
    };
    const read = (text: string) => () => readPlan(text, "plans/monday.json");
    expect(read("{")).toThrow("readPlan: plans/monday.json must be JSON");
    expect(read(broken((json) => (json.trials[2].batchG = -1)))).toThrow('trials.2.batchG, got "a number above 0"');
    expect(read(broken((json) => (json.trials[0].oven = 1)))).toThrow("trials.0");
    expect(read(broken((json) => (json.kind = "other")))).toThrow("kind");
    expect(read("[]")).toThrow("must be a plan as savePlan writes it");
  });
});
