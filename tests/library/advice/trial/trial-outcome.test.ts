import { describe, expect, it } from "vitest";
import { trialOutcome } from "../../../../kernel-lib/library/src/advice/trial/trial-outcome";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";

const kitchen = loadKitchen();
const [first] = kitchen.trials;
const done: KitchenTrial = { ...first, coreC: 90, notCrispMin: 6, crispMin: 7, brownScores: [3] };
const outcomeOf = (changes: Partial<KitchenTrial>): string => trialOutcome({ kitchen, trial: { ...done, ...changes } });

describe("trialOutcome", () => {
  it("puts a cold core before colour and crispness", () => {
    expect(outcomeOf({ coreC: 73.9, brownScores: [9] })).toBe("cold core");
    expect(outcomeOf({ coreC: 73.9, crispMin: null })).toBe("cold core");
  });

  it("puts colour before crispness", () => {
    expect(outcomeOf({ brownScores: [8, 7] })).toBe("too brown");
    expect(outcomeOf({ crispMin: null })).toBe("soft");
  });

  it("calls crisp pieces done only where their core was read", () => {
    expect(outcomeOf({})).toBe("crisp");
    expect(outcomeOf({ coreC: null })).toBe("crisp, core not read");
  });

  it("says so when nobody looked or scored", () => {
    expect(outcomeOf({ notCrispMin: null, crispMin: null, crispScores: [], coreC: null })).toBe("not told");
  });
});
