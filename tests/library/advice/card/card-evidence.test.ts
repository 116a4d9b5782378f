import { describe, expect, it } from "vitest";
import { cardEvidence } from "../../../../kernel-lib/library/src/advice/card/card-evidence";
import { reheatCard } from "../../../../kernel-lib/library/src/advice/card/reheat-card";
import { crispWindow } from "../../../../kernel-lib/library/src/advice/window/crisp-window";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen, KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";

const demo = loadKitchen();
const variantId = "turkey-sage";
const variant = demo.variants.find((each) => each.variantId === variantId)!;
const trials = demo.trials.filter((trial) => trial.variantId === variantId);
const here = trials.filter((trial) => trial.applianceId === variant.applianceId);
const kitchenOf = (own: readonly KitchenTrial[]): Kitchen => ({ ...demo, trials: own });
const unmet = (kitchen: Kitchen, more = {}): string[] =>
  cardEvidence({ kitchen, window: crispWindow({ kitchen, variantId, draws: 300, ...more }) })
    .filter((condition) => !condition.met)
    .map((condition) => condition.name);
const cardTime = crispWindow({ kitchen: demo, variantId, draws: 300 }).recommended.cardMin;
const cold = (count: number, coreC: number, timeMin: number): KitchenTrial[] =>
  Array.from({ length: count }, (_, at) => ({
    ...here[0],
    trialId: `cold-${at}`,
    setpointC: variant.setpointC,
    timeMin,
    coreC,
    restedCoreC: null,
  }));

describe("cardEvidence", () => {
  it("gives each condition met or with a trial to run", () => {
    for (const condition of cardEvidence({ kitchen: demo, window: crispWindow({ kitchen: demo, variantId }) })) {
      expect(condition.found.length).toBeGreaterThan(3);
      expect(condition.met).toBe(condition.todo === null);
      expect(condition.met).toBe(condition.missing === null);
    }
  });

  it.each([1, 3, 20])("blocks a card on %d cold cores at its time, and names the trial", (count) => {
    const kitchen = kitchenOf([...trials, ...cold(count, 40, cardTime + 1)]);
    const card = reheatCard({ kitchen, variantId, draws: 300 });
    expect(card.ready).toBe(false);
    expect(card.why.join("; ")).toContain("cold-0");
  });

  it("does not hold a cold core against the card that came before its time or from a harder setting", () => {
    const early = kitchenOf([...trials, ...cold(1, 60, 0.6 * cardTime)]);
    const [thick] = cold(1, 70, cardTime + 1);
    const harder = kitchenOf([
      ...trials,
      { ...thick, thicknessMm: 1.4 * thick.thicknessMm, probesMm: [1.4 * thick.thicknessMm] },
    ]);
    expect(unmet(early)).not.toContain("no cold core");
    expect(unmet(harder)).not.toContain("no cold core");
  });

  it("asks for six trials, two thicknesses and cores on both sides of the limit", () => {
    expect(unmet(kitchenOf(here.slice(0, 1)))).toEqual(
      expect.arrayContaining(["enough trials", "two thicknesses", "cores still climbing"]),
    );
    const unread = kitchenOf(trials.map((trial) => ({ ...trial, coreC: null, restedCoreC: null })));
    expect(unmet(unread)).toEqual(expect.arrayContaining(["cores still climbing", "cores at the limit"]));
    expect(reheatCard({ kitchen: unread, variantId, draws: 300 }).missing.join("; ")).toMatch(
      /take pieces out early, at \d+ to \d+ min, and read the core at once: 3 more/,
    );
  });

  it("asks for trials with the start, load and turn that the card names", () => {
    expect(unmet(demo, { startC: 4 })).toContain("inside what was logged");
    expect(unmet(demo, { loadFraction: 1.2 })).toContain("inside what was logged");
    const unturned = kitchenOf(trials.map((trial) => ({ ...trial, flipMin: null })));
    expect(unmet(unturned, { turned: true })).toContain("inside what was logged");
  });

  it("says nothing is ready without a trial, in sentences", () => {
    const card = reheatCard({ kitchen: kitchenOf([]), variantId, draws: 300 });
    expect(card.ready).toBe(false);
    expect(card.missing.length).toBeGreaterThan(4);
  });
});
