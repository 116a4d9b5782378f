import { againstStationary, fitSurface, stationaryRegion } from "slabwright/fit";
import { centralComposite } from "slabwright/plan";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

const factors = ["a", "b"];
const { points } = centralComposite({ factors: 2, centres: [2, 2] });

/** A surface whose top is at 0.4, -0.3, with errors. */
function drawn(seed: number, sd: number, bendB: number) {
  const random = seededRandom(seed);
  const y = points.map(([a, b]) => 10 - 1.5 * (a - 0.4) ** 2 + bendB * (b + 0.3) ** 2 + random.normal(0, sd));
  return fitSurface({ factors, points, y });
}

describe("stationaryRegion", () => {
  it("holds the true top in 95 of 100 fits, with a sharp top and with one that is nearly a ridge", () => {
    // exact under normal errors: 600 fits, within 4 standard errors
    for (const bendB of [-1, -0.15]) {
      let held = 0;
      for (let seed = 1; seed <= 600; seed++)
        if (againstStationary(drawn(seed, 0.5, bendB), [0.4, -0.3]).pValue > 0.05) held++;
      expect(Math.abs(held / 600 - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / 600));
    }
  });

  it("is where the statistic is below its limit, closed round a sharp top and open along a ridge", () => {
    const sharp = stationaryRegion({ fit: drawn(3, 0.2, -1), levels: 101 });
    expect(sharp.reachesEdge).toBe(false);
    const [[low, high]] = sharp.bounds ?? [[1, 0]];
    expect(low).toBeLessThan(0.4);
    expect(high).toBeGreaterThan(0.4);
    const inside = sharp.statistics.filter((one) => one <= sharp.limit).length;
    expect(inside / sharp.statistics.length).toBeCloseTo(sharp.share, 12);
    const ridge = stationaryRegion({ fit: drawn(3, 0.3, -0.02) });
    expect(ridge.reachesEdge).toBe(true);
    expect(ridge.reading).toContain("badly known");
    expect(stationaryRegion({ fit: drawn(3, 0.2, -1), levels: 101, confidence: 0.5 }).share).toBeLessThan(sharp.share);
  });

  it("refuses more points than it can search, and a plane", () => {
    expect(() => stationaryRegion({ fit: drawn(1, 0.1, -1), levels: 1000 })).toThrow("levels must be");
    const plane = fitSurface({ factors, points, y: points.map(([a], at) => a + 0.1 * (at % 3)), form: "linear" });
    expect(() => stationaryRegion({ fit: plane })).toThrow("must be of a quadratic surface");
  });
});
