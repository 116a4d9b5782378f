import { describe, expect, it } from "vitest";
import { costOf, effortOf, USUAL_COST } from "../../../../kernel-lib/library/src/advice/value/trial-cost";

const load = { panId: "half", batchG: 900, setpointC: 190, timeMin: 12, probe: true } as const;

describe("effortOf", () => {
  it("counts a slab and a setting once, a load each time", () => {
    const one = effortOf([load]);
    expect(one).toEqual({ minutes: 10 + 15 + 5 + 12 + 3 + 2 + 5, gramsMix: 900 });
    expect(effortOf([load, load])).toEqual({ minutes: one.minutes + 22, gramsMix: 900 });
    expect(effortOf([load, { ...load, setpointC: 200 }]).minutes).toBe(one.minutes + 27);
    expect(effortOf([load, { ...load, batchG: 700 }])).toEqual({ minutes: one.minutes + 47, gramsMix: 1600 });
    expect(effortOf([{ ...load, probe: false }]).minutes).toBe(one.minutes - 7);
  });

  it("takes other minutes, none below 0", () => {
    expect(costOf({ probeMin: 4 })).toEqual({ ...USUAL_COST, probeMin: 4 });
    expect(() => costOf({ cutMin: -1 })).toThrow("nextTrial: cost.cutMin must be >= 0 min, got -1");
  });
});
