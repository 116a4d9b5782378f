import { describe, expect, it } from "vitest";
import { trialsToTell } from "../../../../kernel-lib/library/src/advice/tell/trials-to-tell";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { powerOfTwoMeans } from "../../../../kernel-lib/library/src/plan/power/two-means";

const kitchen = loadKitchen();
const variantId = "corn-puff";
const told = trialsToTell({ kitchen, variantId });

describe("trialsToTell", () => {
  it("gives the first number of trials that has the chance asked for", () => {
    for (const { difference, sd, morningSd, sideBySide, apart } of told.quantities) {
      expect(powerOfTwoMeans({ difference, sd }, sideBySide)).toBeGreaterThanOrEqual(0.9);
      if (sideBySide > 2) expect(powerOfTwoMeans({ difference, sd }, sideBySide - 1)).toBeLessThan(0.9);
      expect(powerOfTwoMeans({ difference, sd: Math.hypot(sd, morningSd) }, apart)).toBeGreaterThanOrEqual(0.9);
      expect(apart).toBeGreaterThanOrEqual(sideBySide);
    }
  });

  it("holds its number between those of little and of much scatter, and its chances rise", () => {
    for (const { sideBySide, sideBySide95, chances } of told.quantities) {
      expect(sideBySide95[0]).toBeLessThanOrEqual(sideBySide);
      expect(sideBySide95[1]).toBeGreaterThanOrEqual(sideBySide);
      for (const [at, one] of chances.entries()) {
        expect(one.sideBySide95[0]).toBeLessThanOrEqual(one.sideBySide);
        expect(one.sideBySide95[1]).toBeGreaterThanOrEqual(one.sideBySide);
        if (at > 0) expect(one.sideBySide).toBeGreaterThanOrEqual(chances[at - 1].sideBySide);
      }
    }
  });

  it("asks for fewer trials where a larger difference will do", () => {
    const larger = trialsToTell({ kitchen, variantId, minutes: 2, points: 2, lossPoints: 2 });
    for (const [at, { sideBySide }] of larger.quantities.entries())
      expect(sideBySide).toBeLessThan(told.quantities[at].sideBySide);
    expect(larger.sentence).toContain("differs by 2 points");
    expect(told.sentence).toContain("differs by 1 point:");
  });

  it("refuses a difference of nothing", () => {
    expect(() => trialsToTell({ kitchen, variantId, minutes: 0 })).toThrow("minutes must be > 0 min");
  });
});
