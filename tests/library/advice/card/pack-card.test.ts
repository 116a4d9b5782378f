import { describe, expect, it } from "vitest";
import { packCard, populationRange } from "../../../../kernel-lib/library/src/advice/card/pack-card";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

const kitchen = loadKitchen();

describe("packCard", () => {
  it("says from one appliance that it was tested in that one only", () => {
    const trials = kitchen.trials.filter((trial) => trial.applianceId === "small-basket");
    const card = packCard({ kitchen: { ...kitchen, trials }, variantId: "beet-lentil", draws: 300 });
    expect(card.rangeMin).toBe(null);
    expect(card.lines.join(" ")).toContain(
      "Tested in small basket only: in another appliance watch, and probe the core.",
    );
    expect(card.lines.at(-1)).toContain("Local food codes");
  });

  it("gives a time for each of two, and none without a trial", () => {
    const card = packCard({ kitchen, variantId: "beet-lentil", draws: 300 });
    expect(card.cards).toHaveLength(2);
    expect(card.lines[0]).toMatch(/small basket [\d.]+ min; fan oven [\d.]+ min/);
    const none = packCard({ kitchen: { ...kitchen, trials: [] }, variantId: "beet-lentil" });
    expect(none).toMatchObject({ ready: false, lines: [], why: ["no trial of it was logged"] });
  });
});

describe("populationRange", () => {
  it("works in about nine of ten appliances drawn from the population of those tried", () => {
    const random = seededRandom(6);
    const appliance = () => Math.exp(0.12 * random.normal());
    let crisp = 0;
    let closes = 0;
    let made = 0;
    for (let kitchenOf = 0; kitchenOf < 400; kitchenOf++) {
      const tried = Array.from({ length: 4 }, appliance);
      const range = populationRange({
        crispMin: tried.map((factor) => 10 * factor),
        safeMin: tried.map((factor) => 7 * factor),
        closesMin: tried.map((factor) => 22 * factor),
      });
      if (range === null) continue;
      for (let next = 0; next < 20; next++) {
        const factor = appliance();
        made++;
        if (10 * factor <= range[0]) crisp++;
        if (22 * factor >= range[1]) closes++;
      }
    }
    expect(made).toBeGreaterThan(7000);
    expect(crisp / made).toBeGreaterThan(0.9);
    expect(closes / made).toBeGreaterThan(0.9);
  });

  it("is empty where no one time works", () => {
    expect(populationRange({ crispMin: [9, 14, 20], safeMin: [6, 9, 12], closesMin: [12, 18, 26] })).toBe(null);
  });
});
