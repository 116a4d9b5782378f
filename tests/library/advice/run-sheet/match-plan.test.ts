import { describe, expect, it } from "vitest";
import { matchPlan } from "../../../../kernel-lib/library/src/advice/run-sheet/match-plan";
import { trialPlan } from "../../../../kernel-lib/library/src/advice/run-sheet/trial-plan";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";

const demo = loadKitchen();
const variantId = "beet-lentil";
const today = "2026-05-04";
const [model] = demo.trials.filter((trial) => trial.variantId === variantId && trial.crispMin !== null);
const planned = [
  { variantId, batchG: 760, thicknessMm: 6, timeMin: 8.5, looksMin: [6, 7, 8.5], loadFraction: 0.6 },
  { variantId, batchG: 1065, thicknessMm: 8.2, timeMin: 11, setpointC: 190 },
  { variantId, batchG: 760, thicknessMm: 6, timeMin: 3.5 },
];
const plan = trialPlan({ kitchen: demo, name: "monday", trials: planned, today });

/** A trial of the demo as it would be logged for a planned one. */
function runAs(at: number, change: Partial<KitchenTrial> = {}): KitchenTrial {
  const { trialId, batchG, setpointC, thicknessMm = 6, timeMin = 8 } = plan.trials[at];
  return {
    ...model,
    date: today,
    trialId,
    batchG,
    setpointC,
    thicknessMm,
    probesMm: [thicknessMm],
    timeMin,
    ...change,
  };
}
const matched = (...trials: readonly KitchenTrial[]) =>
  matchPlan({ kitchen: { ...demo, trials: [...demo.trials, ...trials] }, plan });

describe("matchPlan", () => {
  it("finds trials by their names, and says nothing of those run as planned", () => {
    const { rows, unplanned, sentence } = matched(runAs(0), runAs(1, { looksMin: [9, 10] }), runAs(2));
    expect(rows.map(({ by }) => by)).toEqual(["name", "name", "name"]);
    expect(rows.flatMap(({ deviations }) => deviations)).toEqual([]);
    expect(unplanned).toEqual([]);
    expect(sentence).toBe("Of 3 trials planned under monday 3 are logged.");
  });

  it("says what was run otherwise, in the kitchen's words, and a core that was not read always", () => {
    const other = runAs(1, { setpointC: 200, timeMin: 14, batchG: 900, coreC: null, restedCoreC: null });
    const { rows, sentence } = matched(other);
    expect(rows[1].deviations).toEqual([
      "900 g, not 1065 g",
      "200 °C, not 190 °C",
      "out at 14 min, not 11 min",
      "no core is logged",
    ]);
    expect(sentence).toContain(`Run otherwise than planned: ${plan.trials[1].trialId} (900 g, not 1065 g; 200 °C`);
    const us = matchPlan({ kitchen: { ...demo, units: "us", trials: [...demo.trials, other] }, plan });
    expect(us.rows[1].deviations.join(" ")).toMatch(/oz, not .*°F, not/);
  });

  it("finds a trial under another name as the nearest, each once, and names the rest", () => {
    const near = runAs(0, { trialId: "odd-1", timeMin: 8, batchG: 770 });
    const far = runAs(0, { trialId: "odd-2", setpointC: 230, timeMin: 30 });
    const { rows, unplanned } = matched(near, far);
    expect(rows[0]).toMatchObject({ by: "nearest", trial: { trialId: "odd-1" } });
    expect(rows[0].deviations[0]).toBe(`logged as odd-1, not ${plan.trials[0].trialId}`);
    expect(rows.slice(1).map(({ trial }) => trial)).toEqual([null, null]);
    expect(unplanned).toEqual(["odd-2"]);
  });

  it("takes no trial from before the plan, of the same day or earlier", () => {
    const early = runAs(0, { trialId: "BL-77" });
    const kitchen = { ...demo, trials: [...demo.trials, early] };
    const later = trialPlan({ kitchen, name: "tuesday", trials: planned, today });
    expect(matchPlan({ kitchen, plan: later }).rows.every(({ trial }) => trial === null)).toBe(true);
    expect(matched(runAs(0, { trialId: "BL-77", date: "2026-05-03" })).rows[0].trial).toBeNull();
  });

  it("counts a watched load that came out as soon as it was crisp as run as planned", () => {
    expect(matched(runAs(0, { timeMin: 7, notCrispMin: 6, crispMin: 7 })).rows[0].deviations).toEqual([]);
    expect(matched(runAs(2, { timeMin: 2.5 })).rows[2].deviations).toEqual(["out at 2.5 min, not 3.5 min"]);
  });
});
