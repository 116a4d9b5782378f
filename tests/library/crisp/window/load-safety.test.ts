import { describe, expect, it } from "vitest";
import { USUAL_NOISE } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-noise";
import {
  loadFactor,
  loadScatter,
  safeFrom,
  wholeLoadSafe,
} from "../../../../kernel-lib/library/src/crisp/window/load-safety";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

describe("wholeLoadSafe", () => {
  it("is the share of simulated loads whose slowest piece is in time", () => {
    const random = seededRandom(4);
    for (const scatter of [
      { run: 0.06, piece: 0.07, pieces: 12 },
      { run: 0.12, piece: 0.03, pieces: 40 },
      { run: 0.02, piece: 0.1, pieces: 1 },
    ])
      for (const x of [0.05, 0.15, 0.25]) {
        let safe = 0;
        const loads = 20_000;
        for (let load = 0; load < loads; load++) {
          const run = scatter.run * random.normal();
          let slowest = Number.NEGATIVE_INFINITY;
          for (let piece = 0; piece < scatter.pieces; piece++)
            slowest = Math.max(slowest, run + scatter.piece * random.normal());
          if (slowest <= x) safe++;
        }
        expect(Math.abs(wholeLoadSafe(scatter, x) - safe / loads)).toBeLessThan(0.012);
      }
  });
});

describe("loadFactor", () => {
  it("leaves one load in a hundred, and asks more of larger and more scattered loads", () => {
    const scatter = loadScatter({ noise: USUAL_NOISE, unevenness: 0.03, pieces: 12, elasticity: 0.8 });
    expect(wholeLoadSafe(scatter, Math.log(loadFactor(scatter)))).toBeCloseTo(0.99, 6);
    expect(loadFactor({ ...scatter, pieces: 40 })).toBeGreaterThan(loadFactor(scatter));
    expect(loadFactor({ ...scatter, run: 0.12 })).toBeGreaterThan(loadFactor(scatter));
  });
});

describe("safeFrom", () => {
  it("takes the tail that few draws do not show, and the draws' own where it is longer", () => {
    expect(safeFrom(Float64Array.from([9, 10, 11, 10.5, 9.5]), 1)).toBeGreaterThan(11);
    expect(
      safeFrom(
        Float64Array.from({ length: 1000 }, (_, at) => (at < 30 ? 30 : 10)),
        1,
      ),
    ).toBe(30);
    expect(safeFrom(Float64Array.from([9, 10, 11]), 1.2)).toBeCloseTo(
      1.2 * safeFrom(Float64Array.from([9, 10, 11]), 1),
      9,
    );
  });
});
