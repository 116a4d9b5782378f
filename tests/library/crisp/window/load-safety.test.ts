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
      { run: 0.06, piece: 0.07, pieces: 12, doubt: 0 },
      { run: 0.12, piece: 0.03, pieces: 40, doubt: 0 },
      { run: 0.02, piece: 0.1, pieces: 1, doubt: 0 },
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

describe("loadScatter", () => {
  it("joins runs with sessions through the surface's share and slabs with them, and places with unevenness, by hand", () => {
    const noise = { ...USUAL_NOISE, run: 0.06, session: 0.08 };
    const options = { noise, unevenness: 0.1, pieces: 9, elasticity: 0.5 };
    const { run, piece, pieces, doubt } = loadScatter({ ...options, trials: 4 });
    // known from six usual and two of the four trials: 1/√16 of 2.3263 · 0.05
    expect(doubt).toBeCloseTo((2.3263 * 0.05) / 4, 12);
    expect(loadScatter({ ...options, trials: 0 }).doubt).toBeGreaterThan(doubt);
    expect(run).toBeCloseTo(Math.hypot(0.05, 1.3 * 0.02), 12);
    expect(piece).toBeCloseTo(Math.hypot(0.03, 0.13), 12);
    expect(pieces).toBe(9);
  });
});

describe("loadFactor", () => {
  it("is e^2.326 s for a load of one piece, whatever of its scatter is the run's", () => {
    for (const [run, piece] of [
      [0.06, 0.08],
      [0.08, 0.06],
    ])
      expect(Math.log(loadFactor({ run, piece, pieces: 1, doubt: 0 })) / 0.1).toBeCloseTo(2.3263, 3);
  });

  it("leaves one load in a hundred, and asks more of larger and more scattered loads", () => {
    const scatter = loadScatter({ noise: USUAL_NOISE, unevenness: 0.03, pieces: 12, elasticity: 0.8, trials: 0 });
    expect(wholeLoadSafe(scatter, Math.log(loadFactor(scatter)))).toBeCloseTo(0.99, 6);
    expect(loadFactor({ ...scatter, pieces: 40 })).toBeGreaterThan(loadFactor(scatter));
    expect(loadFactor({ ...scatter, run: 0.12 })).toBeGreaterThan(loadFactor(scatter));
  });
});

describe("safeFrom", () => {
  it("is the middle and 2.0537 standard deviations of a lognormal where the draws show no longer tail, by hand", () => {
    const times = Float64Array.from([8, 10, 12.5]);
    const sd = Math.log(1.25);
    expect(safeFrom(times, 1, 0)).toBeCloseTo(10 * Math.exp(2.0537 * sd), 9);
    expect(safeFrom(times, 1, 0.1)).toBeCloseTo(10 * Math.exp(2.0537 * Math.hypot(sd, 0.1)), 9);
    expect(safeFrom(Float64Array.from([10]), 1.1, 0)).toBeCloseTo(11, 9);
  });
  it("is never when more than one draw in fifty never gets there, and leaves the one that does not out of the spread", () => {
    const draws = (never: number) => Float64Array.from({ length: 100 }, (_, at) => (at < never ? 1e4 : 10));
    expect(safeFrom(draws(1), 1, 0)).toBeCloseTo(10, 9);
    expect(safeFrom(draws(2), 1.2, 0)).toBe(1e4);
    expect(safeFrom(draws(3), 1.2, 0)).toBe(1e4);
    expect(safeFrom(draws(100), 1, 0)).toBe(1e4);
  });
  it("takes the tail that few draws do not show, and the draws' own where it is longer", () => {
    expect(safeFrom(Float64Array.from([9, 10, 11, 10.5, 9.5]), 1, 0)).toBeGreaterThan(11);
    expect(
      safeFrom(
        Float64Array.from({ length: 1000 }, (_, at) => (at < 30 ? 30 : 10)),
        1,
        0,
      ),
    ).toBe(30);
    expect(safeFrom(Float64Array.from([9, 10, 11]), 1.2, 0)).toBeCloseTo(
      1.2 * safeFrom(Float64Array.from([9, 10, 11]), 1, 0),
      9,
    );
  });
});
