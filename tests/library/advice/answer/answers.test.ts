import { describe, expect, it } from "vitest";
import { type Answer, answers } from "../../../../kernel-lib/library/src/advice/answer/answers";
import { reheatCard } from "../../../../kernel-lib/library/src/advice/card/reheat-card";
import { firstMorning } from "../../../../kernel-lib/library/src/advice/trial/first-morning";
import { decide } from "../../../../kernel-lib/library/src/advice/window/decide";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen, KitchenTrial, KitchenVariant } from "../../../../kernel-lib/library/src/trials/kitchen";
import { variantOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";

const demo = loadKitchen();
const all = answers({ kitchen: demo });
const turkey = variantOf(demo, "turkey-sage");
const logged = demo.trials.filter((trial) => trial.variantId === turkey.variantId);
const alone = (trials: readonly KitchenTrial[], changed: Partial<KitchenVariant> = {}): Answer => {
  const kitchen: Kitchen = { ...demo, variants: [{ ...turkey, ...changed }], trials };
  return answers({ kitchen }).products[0];
};

describe("answers", () => {
  it("gives every product of the kitchen once, on its own pan, with the time of its card", () => {
    expect(all.products.map(({ variantId }) => variantId)).toEqual(demo.variants.map(({ variantId }) => variantId));
    for (const { variantId, cardMin, coreByMin, success, state, missing, card } of all.products) {
      const own = reheatCard({ kitchen: demo, variantId });
      expect(cardMin).toBe(own.window.recommended.cardMin);
      expect(success).toBe(own.window.recommended.success);
      expect(coreByMin as number).toBeLessThanOrEqual(cardMin as number);
      expect(state === "ready").toBe(own.ready);
      expect(missing === null).toBe(own.ready);
      expect(card?.lines).toEqual(own.lines);
    }
  });

  it("takes the decisions that it is given for those on the products' own pans", () => {
    const decisions = decide({ kitchen: demo });
    const given = answers({ kitchen: demo, decisions });
    expect(given.products.map(({ sentences }) => sentences)).toEqual(all.products.map(({ sentences }) => sentences));
    const own = decisions.find(({ variantId, panId }) => variantId === turkey.variantId && panId === turkey.panId)!;
    const product = given.products.find(({ variantId }) => variantId === turkey.variantId)!;
    expect(product.card?.window).toBe(own.outcome?.window);
  });

  it("stands notices beside the products that they touch", () => {
    const notices = ["trial TS-01: look again", "pollock-dill and beet-lentil: twice", "trials/new.csv is empty"];
    const told = answers({ kitchen: { ...demo, trials: [{ ...logged[0], trialId: "TS-01" }], notices } });
    const touching = (id: string): readonly string[] =>
      told.products.find(({ variantId }) => variantId === id)!.notices;
    expect(touching("turkey-sage")).toEqual([notices[0]]);
    expect(touching("pollock-dill")).toEqual([notices[1]]);
    expect(touching("beet-lentil")).toEqual([notices[1]]);
    expect(told.notices).toEqual([notices[2]]);
  });

  it("asks a product without trials for its first ones, and gives no time", () => {
    const young = alone([]);
    expect(young).toMatchObject({ state: "not tried", missing: "no trial logged yet", cardMin: null, coreByMin: null });
    expect(young.success).toBeNull();
    const plan = firstMorning({ kitchen: { ...demo, trials: [] }, variantId: turkey.variantId });
    expect(young.steps).toEqual(plan.steps.map(({ sentence }) => sentence));
    expect(young.sentences.join(" ")).toContain("No trial of it is logged yet");
    expect(young.limit.limitC).toBe(74);
  });

  it("has an answer for every product of a kitchen that has logged nothing", () => {
    const { products } = answers({ kitchen: { ...demo, trials: [], notices: [] } });
    expect(products.map(({ state }) => state)).toEqual(demo.variants.map(() => "not tried"));
    for (const { steps } of products) expect(steps.length).toBeGreaterThan(3);
  });

  it("says in a few words how many trials are missing after the first", () => {
    const young = alone(logged.slice(0, 1));
    expect(young.state).toBe("not ready");
    expect(young.missing).toMatch(/^5 more trials, and \d things more$/);
    expect(young.steps.length).toBeGreaterThan(2);
  });

  it("gives no time far from what was tried", () => {
    const far = alone(logged, { setpointC: 140 });
    expect(far).toMatchObject({ state: "not tried", missing: "trials at this setting", cardMin: null, success: null });
    expect(far.sentences.join(" ")).toMatch(/Nobody has tried it like this \(.*outside the trials/);
  });

  it("gives no time at which a core was cold, and says so before all else", () => {
    const { cardMin, setpointC } = all.products.find(({ variantId }) => variantId === turkey.variantId)!;
    const cold = {
      ...logged[0],
      trialId: "cold",
      setpointC,
      timeMin: (cardMin as number) + 1,
      coreC: 50,
      restedCoreC: null,
    };
    const told = alone([...logged, { ...cold, applianceId: turkey.applianceId }]);
    expect(told.state).toBe("not ready");
    expect(told.missing).toMatch(/^a cold core that nobody has explained/);
    expect([told.cardMin, told.coreByMin, told.success]).toEqual([null, null, null]);
    expect(told.sentences.join(" ")).toMatch(/No time is given: cold read 50 °C/);
    expect(told.sentences.join(" ")).not.toMatch(/take out after/);
  });

  it("says of a batter on a sheet that it does not fit, and of a batch above the brim how much would", () => {
    const batter = alone(logged, { form: "batter" });
    expect(batter).toMatchObject({
      state: "does not fit",
      missing: "another kind of pan",
      thicknessMm: null,
      card: null,
    });
    expect(batter.sentences[0]).toMatch(/do not go on one half sheet: a batter: bake it in wells/);
    const tooMuch = alone(logged, { batchG: 9000 });
    expect(tooMuch).toMatchObject({ state: "cannot be worked out", cardMin: null, card: null });
    expect(tooMuch.sentences[0]).toMatch(/half-sheet holds at most \d+ g/);
  });

  it("says why nothing can be worked out, and throws nothing", () => {
    const cool = alone(logged, { setpointC: 110 });
    expect(cool).toMatchObject({ state: "cannot be worked out", cardMin: null, card: null, steps: [] });
    expect(cool.sentences[0]).toMatch(/setpointC must be between 130 and 290 °C, got 110/);
  });

  it("names what could be changed where a product is not ready by its window", () => {
    const slow = alone(logged, { longestMin: 10 });
    expect(slow.state).toBe("not ready");
    expect(slow.missing).toMatch(/^takes [\d.]+ min, 10 accepted/);
    expect(slow.sentences.join(" ")).toMatch(/Not for a card yet\..*Too thick: /);
    expect(slow.steps.some((step) => step.startsWith("reduce the batch"))).toBe(true);
  });

  it("answers for a kitchen without products", () => {
    expect(answers({ kitchen: { ...demo, variants: [], trials: [] } }).products).toEqual([]);
  });
});
