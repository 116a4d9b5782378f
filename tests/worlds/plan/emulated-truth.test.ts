import { describe, expect, it } from "vitest";
import { shareAt } from "../score";
import { emulatedTruth } from "./emulated-truth";
import { planKitchen } from "./plan-ways";

describe("emulatedTruth", () => {
  it("is the stored truth of the own setting: times to 1 %, shares to two points within 1.5 % of a time", () => {
    for (const at of [1, 2]) {
      const { world, emulator, stored } = planKitchen(at);
      const { setting, truth } = stored.settings[0];
      const near = emulatedTruth({ world, emulator, setting, loads: 300 });
      for (const name of ["coreMin", "crispMin", "brownMin", "dryMin"] as const)
        expect(Math.abs(near.typical[name] / truth.typical[name] - 1)).toBeLessThan(0.01);
      for (const timeMin of truth.timesMin) {
        const around = [0.985, 1, 1.015].map((by) => shareAt(truth, truth.good, by * timeMin));
        const good = shareAt(near, near.good, timeMin);
        expect(good).toBeGreaterThan(Math.min(...around) - 0.02);
        expect(good).toBeLessThan(Math.max(...around) + 0.02);
      }
    }
  });
});
