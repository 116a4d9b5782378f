import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKitchen } from "slabwright";
import { matchPlan, runSheet, trialPlan } from "slabwright/advice";
import {
  checkKitchenFolder,
  loadPlan,
  logDraft,
  newKitchen,
  planNames,
  plannedNames,
  savePlan,
  trialForm,
  writeRunSheet,
} from "slabwright/notebook";
import { beforeEach, describe, expect, it } from "vitest";

let folder = "";
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), "kitchen-")), "corner");
  newKitchen({ folder, units: "us" });
});
const planIn = (times: readonly number[], name = "monday") => {
  const kitchen = loadKitchen(folder);
  const [{ variantId }] = kitchen.variants;
  return trialPlan({
    kitchen,
    name,
    today: "2026-05-04",
    seed: 7,
    trials: times.map((timeMin) => ({ variantId, timeMin, looksMin: [timeMin - 1], loadFraction: 0.5 })),
  });
};

describe("savePlan", () => {
  it("keeps a plan that loads again to the digit, in a folder that check-kitchen knows", () => {
    const plan = planIn([9.25, 12, 1 / 0.3]);
    expect(savePlan(plan, { folder }).file).toBe("plans/monday.json");
    expect(loadPlan("monday", { folder })).toEqual(plan);
    expect(planNames(folder)).toEqual(["monday"]);
    const { problems, notices } = checkKitchenFolder(folder);
    expect([...problems, ...notices].filter((line) => line.includes("plans"))).toEqual([]);
    expect(readdirSync(join(folder, "plans"))).toEqual(["monday.json"]);
  });

  it("overwrites nothing: the same again is fine, another of the name is refused and the file stays", () => {
    savePlan(planIn([9, 12]), { folder });
    const before = readFileSync(join(folder, "plans/monday.json"), "utf8");
    expect(savePlan(planIn([9, 12]), { folder }).sentence).toContain("held this plan already");
    expect(() => savePlan(planIn([9, 13]), { folder })).toThrow(
      "must be a name that no other plan has (plans/monday.json holds another)",
    );
    expect(readFileSync(join(folder, "plans/monday.json"), "utf8")).toBe(before);
    expect(readdirSync(join(folder, "plans"))).toEqual(["monday.json"]);
  });

  it("is resumed after some of it was logged: the same plan, the rest open", () => {
    savePlan(planIn([9, 12]), { folder });
    const plan = loadPlan("monday", { folder });
    const [{ cells, trialId, words }] = trialForm(folder).plans[0].trials;
    expect(words).toContain("out at");
    logDraft(
      { ...cells, thickness_in: "0.35", time_min: plan.trials[0].timeMin ?? 9, date: "2026-05-04", core_f: 180 },
      { folder },
    );
    const { rows } = matchPlan({ kitchen: loadKitchen(folder), plan: loadPlan("monday", { folder }) });
    expect(rows.map(({ by }) => by)).toEqual(["name", null]);
    expect(trialForm(folder).plans[0].trials.map((one) => one.trialId)).toEqual([plan.trials[1].trialId]);
    expect(trialId).toBe(plan.trials[0].trialId);
  });

  it("lets no two plans name a trial alike, nor a trial that nobody planned", () => {
    savePlan(planIn([9, 12]), { folder });
    expect(() => savePlan(planIn([10], "tuesday"), { folder })).toThrow(
      "must have names of their own (plans/monday.json plans it already): make the plan with taken: plannedNames()",
    );
    const kitchen = loadKitchen(folder);
    const [{ variantId }] = kitchen.variants;
    const taken = plannedNames(folder);
    const plan = trialPlan({ kitchen, name: "tuesday", today: "2026-05-05", trials: [{ variantId }], taken });
    savePlan(plan, { folder });
    const ids = [...taken, ...plan.trials.map(({ trialId }) => trialId)];
    expect(new Set(ids).size).toBe(3);
    expect(ids).not.toContain(trialForm(folder).variants[0].nextId);
  });

  it("names the nearest plan, and what is no plan stops no form", () => {
    savePlan(planIn([9]), { folder });
    expect(() => loadPlan("mondy", { folder })).toThrow("monday perhaps");
    writeFileSync(join(folder, "plans/spoilt.json"), "{");
    const { plans } = trialForm(folder);
    expect(plans.map(({ name, problem }) => [name, problem === null])).toEqual([
      ["monday", true],
      ["spoilt", false],
    ]);
    expect(plans[1].problem).toContain("plans/spoilt.json must be JSON");
  });
});

describe("writeRunSheet", () => {
  it("writes a page or a log to fill in, and nothing else", () => {
    const kitchen = loadKitchen(folder);
    const sheet = runSheet({ kitchen, plan: planIn([9, 12]) });
    for (const ending of ["html", "csv"]) {
      const path = join(folder, `monday.${ending}`);
      expect(writeRunSheet(sheet, path)).toBe(path);
      expect(readFileSync(path, "utf8")).toContain("monday");
    }
    expect(() => writeRunSheet(sheet, join(folder, "monday.txt"))).toThrow("must end in .html or .csv");
    expect(existsSync(join(folder, "monday.txt"))).toBe(false);
  });
});
