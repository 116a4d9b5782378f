import { describe, expect, it } from "vitest";
import { limitOf } from "../world";
import { type LoggedTrial, worldKitchen } from "../world-kitchen";
import { planKitchen, planWays } from "./plan-ways";
import { POLICIES, seenSuccess } from "./policies";
import { type AskedTrial, runTrial } from "./run-trial";

const kitchen = planKitchen(1);
const { product } = kitchen.world;
const { crispMin, coreMin } = kitchen.stored.settings[0].truth.typical;
const ask = (over: Partial<AskedTrial> = {}): AskedTrial => ({
  thicknessMm: product.thicknessMm,
  setpointC: product.setpointC,
  loadFraction: product.loadFraction,
  timeMin: 10,
  looksMin: [7, 8.5],
  probe: true,
  ...over,
});

/** The means of many kitchens' first trials. */
function meanOf(asked: AskedTrial, of: (trial: LoggedTrial) => number): number {
  const count = 60;
  let sum = 0;
  for (let seed = 0; seed < count; seed++) sum += of(runTrial({ ...kitchen, seed }, [], asked)) / count;
  return sum;
}

describe("runTrial", () => {
  it("is the same for the same kitchen and the same way, and another for another kitchen", () => {
    const first = runTrial(kitchen, [], ask());
    expect(runTrial(kitchen, [], ask())).toEqual(first);
    expect(runTrial({ ...kitchen, seed: 7 }, [], ask()).probesMm).not.toEqual(first.probesMm);
    const second = runTrial(kitchen, [first], ask({ timeMin: 12 }));
    expect(second.slab).toBe(first.slab);
    expect(second.probesMm).toEqual(first.probesMm);
    expect(runTrial(kitchen, [first], ask({ thicknessMm: 8 })).slab).not.toBe(first.slab);
  });

  it("is hotter, lighter and browner the longer it takes, and turns crisp between its looks", () => {
    const early = ask({ timeMin: 0.8 * coreMin, looksMin: [] });
    const late = ask({ timeMin: 1.5 * Math.max(coreMin, crispMin), looksMin: [0.7 * crispMin, 1.2 * crispMin] });
    const core = (trial: LoggedTrial): number => trial.restedCoreC as number;
    expect(meanOf(early, core)).toBeLessThan(limitOf(product).limitC);
    expect(meanOf(late, core)).toBeGreaterThan(limitOf(product).limitC + 8);
    const left = (trial: LoggedTrial): number => trial.afterG / trial.beforeG;
    expect(meanOf(late, left)).toBeLessThan(meanOf(early, left) - 0.05);
    expect(meanOf(late, ({ crispMin: seen }) => (seen === 1.2 * crispMin ? 1 : 0))).toBeGreaterThan(0.8);
  });

  it("reads a core that still thaws as one that a log takes", () => {
    const { outCoreC } = runTrial(kitchen, [], ask({ timeMin: 1, looksMin: [] }));
    expect(outCoreC).toBeGreaterThan(-10);
    expect(outCoreC).toBeLessThan(5);
  });

  it("gives nobody to taste what is not known to be safe, and reads no core unasked", () => {
    const cold = runTrial(kitchen, [], ask({ timeMin: 0.6 * coreMin, looksMin: [] }));
    expect(cold.crispScores).toEqual([]);
    expect(seenSuccess(cold, product, kitchen.stored.tooDryPercent)).toBe(0);
    const unread = runTrial(kitchen, [], ask({ probe: false }));
    expect(unread.restedCoreC).toBeNull();
    expect(unread.crispScores).toEqual([]);
    for (let seed = 0; seed < 200; seed++) {
      const near = runTrial({ ...kitchen, seed }, [], ask({ timeMin: coreMin, looksMin: [] }));
      expect(near.crispScores.length > 0).toBe((near.restedCoreC as number) >= limitOf(product).limitC);
    }
    expect(worldKitchen({ ...kitchen.stored, trials: [cold, unread] }, 2).trials.length).toBe(2);
  });
});

describe("planWays", () => {
  it("runs every policy in a kitchen, the same way twice", () => {
    // mostGain takes another of the same candidates
    const policies = Object.keys(POLICIES).filter((policy) => policy !== "mostGain");
    const ways = planWays({ kitchens: 1, trials: 1, policies });
    expect(ways.map(({ policy }) => policy)).toEqual(policies);
    for (const { asked, printed } of ways) {
      expect(asked.length).toBe(1);
      expect(printed.length).toBe(2);
      // without a trial nothing is known that would do
      expect(printed[0].settled).toBe(false);
    }
    expect(new Set(ways.map(({ asked }) => JSON.stringify(asked))).size).toBe(ways.length);
    expect(planWays({ kitchens: 1, trials: 1, policies: ["grid"] })[0]).toEqual(
      ways.find(({ policy }) => policy === "grid"),
    );
  }, 120_000);

  it("asks for the thickness too, and holds it to the best of three", () => {
    const [way] = planWays({ kitchens: 1, trials: 1, question: "thickness", policies: ["improvement"] });
    expect(way.printed.length).toBe(2);
    expect(way.printed[0].settled).toBe(false);
    // nothing does better than the best, but for the loads that the truths were drawn from
    expect(way.printed.every(({ lost }) => lost > -0.02 && lost <= 1)).toBe(true);
  });
});
