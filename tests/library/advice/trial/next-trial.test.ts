import { describe, expect, it } from "vitest";
import { firstMorning } from "../../../../kernel-lib/library/src/advice/trial/first-morning";
import { type NextTrial, nextTrial } from "../../../../kernel-lib/library/src/advice/trial/next-trial";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen } from "../../../../kernel-lib/library/src/trials/kitchen";
import { massText } from "../../../../kernel-lib/library/src/units/mass-text";

const kitchen = loadKitchen();
const variantId = "turkey-sage";

/** The kitchen as it was after so many trials of the variant. */
function after(count: number): Kitchen {
  const own = kitchen.trials.filter((trial) => trial.variantId === variantId);
  return { ...kitchen, trials: [...kitchen.trials.filter((trial) => !own.includes(trial)), ...own.slice(0, count)] };
}

const young = nextTrial({ kitchen: after(2), variantId });
const grown = nextTrial({ kitchen, variantId: "beet-lentil" });

describe("nextTrial", () => {
  it("offers trials that this kitchen can run: its scale, its dial, its pans, looks that a cook can keep", () => {
    for (const { candidates } of [young, grown]) {
      expect(candidates.length).toBeGreaterThan(200);
      for (const one of candidates) {
        expect(one.batchG % (one.batchG < 200 ? 1 : 10)).toBe(0);
        expect(one.setpointC % 5).toBe(0);
        expect(kitchen.pans.find((pan) => pan.id === one.panId)?.shape).toBe("rectangle");
        expect(one.thicknessMm).toBeLessThanOrEqual(0.95 * 40);
        expect(one.looksMin.at(-1)).toBe(one.timeMin);
        const apart = one.looksMin.slice(1).map((look, at) => look - one.looksMin[at]);
        for (const gap of apart) expect(gap).toBeGreaterThanOrEqual(1);
        expect(one.minutes).toBeGreaterThan(one.timeMin + 30);
        expect(one.gramsMix).toBe(one.batchG);
        expect(Math.abs(one.gain)).toBeLessThanOrEqual(1);
      }
      expect(new Set(candidates.map(({ probe }) => probe)).size).toBe(2);
      expect(candidates.filter(({ reason }) => reason !== null)).toHaveLength(5);
      expect(candidates[0].reason).not.toBeNull();
    }
  });

  it("gives the same trial to the last digit for the same log and seed", () => {
    const again = nextTrial({ kitchen: after(2), variantId });
    expect(again.candidates).toEqual(young.candidates);
    expect(again.stopping).toEqual(young.stopping);
  });

  it("finds a trial worth much while little is logged, and little once much is: and then says stop", () => {
    const bestOf = ({ candidates }: NextTrial): number => Math.max(...candidates.map(({ gain }) => gain));
    expect(bestOf(young)).toBeGreaterThan(0.05);
    expect(young.stopping.stop).toBe(false);
    expect(young.stopping.gain).toBeCloseTo(bestOf(young), 12);
    expect(young.stopping.chanceOfChange).toBeGreaterThan(0.5);
    for (let at = 1; at < young.stopping.ahead.length; at++)
      expect(young.stopping.ahead[at]).toBeGreaterThanOrEqual(young.stopping.ahead[at - 1]);
    expect(bestOf(grown)).toBeLessThan(0.005);
    expect(grown.stopping.stop).toBe(true);
    expect(grown.stopping.sentence).toMatch(/ should gain \d\.\d points of success .*: stop\.$/);
  });

  it("is worth more with the core read than without: nobody tastes what was not probed", () => {
    const pairs = young.candidates
      .filter(({ probe }) => !probe)
      .map((bare) => ({
        bare,
        read: young.candidates.find(
          (one) =>
            one.probe &&
            (["panId", "batchG", "setpointC", "loadFraction", "timeMin"] as const).every(
              (key) => one[key] === bare[key],
            ),
        ),
      }));
    expect(pairs.length).toBeGreaterThan(20);
    for (const { bare, read } of pairs) {
      expect(read?.gain).toBeGreaterThan(bare.gain - 0.01);
      expect(read?.minutes).toBeGreaterThan(bare.minutes);
    }
  });

  it("says the best trial in words, with its reason", () => {
    const [best] = young.candidates;
    const pan = kitchen.pans.find(({ id }) => id === best.panId)?.name;
    expect(young.sentence).toContain(`Next: ${massText(best.batchG, "metric")} of mix on the ${pan}, `);
    expect(young.sentence).toContain(` in the small basket; look at `);
    expect(young.sentence).toContain("have your 4 tasters score them");
    expect(young.sentence).toContain(best.reason as string);
    expect(best.reason).toContain(`${massText(best.batchG, "metric")} on the ${pan}, `);
    expect(best.reason).toMatch(/, look at [\d., and]+ min; it /);
    expect(young.tasters).toBe(4);
  });

  it("keeps to a sound first morning while the log is young: a second thickness, cores low and high", () => {
    const [best] = young.candidates;
    const logged = after(2).trials.filter((trial) => trial.variantId === variantId);
    for (const { thicknessMm } of logged)
      expect(Math.abs(Math.log(best.thicknessMm / thicknessMm))).toBeGreaterThan(Math.log(1.15));
    expect(best.probe).toBe(true);
    expect(best.reason).toMatch(/it brings .*a second thickness/);
  });

  it("is the first morning where nothing was logged", () => {
    const empty = after(0);
    const next = nextTrial({ kitchen: empty, variantId });
    expect(next.sentence).toMatch(/^No trial of turkey and sage sticks is logged yet\. The first morning with /);
    expect(next.steps).toEqual(firstMorning({ kitchen: empty, variantId }).steps);
    expect(next.stopping.stop).toBe(false);
  });
});
