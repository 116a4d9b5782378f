import { describe, expect, it } from "vitest";
import { storedWorlds } from "../stored-world";
import { scorePrinted } from "./score-printed";

describe("scorePrinted", () => {
  it("counts a safe time on the plateau as settled, an unsafe or an overdone one not", () => {
    for (const { settings } of storedWorlds()) {
      const { truth } = settings[0];
      const safeAt = truth.safeLoads.findIndex((share) => share >= 0.99);
      const bestAt = truth.good.reduce(
        (best, good, at) => (at >= safeAt && good > truth.good[best] ? at : best),
        safeAt,
      );
      const best = scorePrinted(truth, truth.timesMin[bestAt]);
      expect(best).toMatchObject({ offMin: 0, settled: true });
      expect(best.lost).toBeCloseTo(0, 5);
      expect(scorePrinted(truth, truth.typical.coreMin).settled).toBe(false);
      expect(scorePrinted(truth, truth.typical.closesMin + 1.1).settled).toBe(false);
    }
  });
});
