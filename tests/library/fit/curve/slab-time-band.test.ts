import fc from "fast-check";
import { curveModel, fitCurve, fitSlabTime, predictSlabTime, profileInterval } from "slabwright/fit";
import { describe, expect, it } from "vitest";
import { slabTimeBand } from "../../../../kernel-lib/library/src/fit/curve/slab-time-band";
import { intervalFactor } from "../../../../kernel-lib/library/src/fit/doubt/interval-factor";
import { solveNonnegative } from "../../../../kernel-lib/library/src/fit/least-squares/solve-nonnegative";

const thicknessMm = [6, 7, 8, 9, 10, 11, 12, 13, 14, 15];
// bends down, so that b rests at 0
const down = [6.9, 7.6, 8.6, 9.5, 10.0, 10.9, 11.5, 12.4, 12.9, 13.5];
// 4 + 0.8 L + 0.05 L² and a little scatter: nothing rests, nor is a bound near
const up = [10.62, 12.02, 13.61, 15.26, 16.98, 18.87, 20.79, 22.86, 25.01, 27.23];

describe("slabTimeBand", () => {
  it("is the profile interval of the time itself as a parameter, where no bound but b's comes into play", () => {
    const fit = fitSlabTime({ thicknessMm, timeMin: down });
    expect(fit.parameters.b.atBound).toBe("lower");
    for (const at of [8, 18]) {
      const direct = curveModel({
        name: "time at a thickness",
        evaluate: (x, { time, a, b }) => time + a * (x - at) + b * (x * x - at * at),
        start: { time: 12, a: 1, b: 0.01 },
        lower: { b: 0 },
      });
      const { interval } = profileInterval(direct, fitCurve(direct, { x: thicknessMm, y: down }), "time");
      const [low, high] = slabTimeBand(fit, at);
      expect(low).toBeCloseTo(interval[0], 6);
      expect(high).toBeCloseTo(interval[1], 6);
    }
  });
  it("is even about the curve where the trials settle every term, uneven where b rests at its bound", () => {
    const settled = predictSlabTime(fitSlabTime({ thicknessMm, timeMin: up }), 12);
    expect(settled.confidence95[1] - settled.timeMin).toBeCloseTo(settled.timeMin - settled.confidence95[0], 9);
    const resting = predictSlabTime(fitSlabTime({ thicknessMm, timeMin: down }), 25);
    const above = resting.confidence95[1] - resting.timeMin;
    expect(above).toBeGreaterThan(1.5 * (resting.timeMin - resting.confidence95[0]));
  });
  it("holds every allowed curve within its sum of squares, and its ends are such curves", () => {
    const makes = fc.record({
      timeMin: fc.array(fc.double({ min: 4, max: 20, noNaN: true }), { minLength: 6, maxLength: 6 }),
      step: fc.tuple(...Array.from({ length: 3 }, () => fc.double({ min: -1, max: 1, noNaN: true }))),
      at: fc.double({ min: 2, max: 30, noNaN: true }),
    });
    let inside = 0;
    fc.assert(
      fc.property(makes, ({ timeMin, step, at }) => {
        const L = [6, 8, 9, 11, 14, 16];
        fc.pre(new Set(timeMin).size > 1);
        const fit = fitSlabTime({ thicknessMm: L, timeMin });
        const [low, high] = slabTimeBand(fit, at);
        const room = fit.rss + (intervalFactor(fit) * fit.residualSd) ** 2;
        const rssOf = (c0: number, a: number, b: number): number =>
          L.reduce((sum, x, i) => sum + (timeMin[i] - c0 - a * x - b * x * x) ** 2, 0);
        const { c0, a, b } = fit.parameters;
        const other = [c0.estimate + 3 * step[0], a.estimate + 0.5 * step[1], b.estimate + 0.03 * step[2]];
        if (other.every((value) => value >= 0) && rssOf(other[0], other[1], other[2]) <= room) {
          inside++;
          const time = other[0] + other[1] * at + other[2] * at * at;
          expect(time).toBeGreaterThanOrEqual(low - 1e-7);
          expect(time).toBeLessThanOrEqual(high + 1e-7);
        }
        // the curve through an end that fits best, its time there pressed upon it by a heavy point
        for (const end of [low, high]) {
          if (end === 0) {
            expect(rssOf(0, 0, 0)).toBeLessThanOrEqual(room);
            continue;
          }
          const heavy = 1e4;
          const rows = [...L, at].map((x, i) => (i < L.length ? [1, x, x * x] : [heavy, heavy * x, heavy * x * x]));
          const vectors = [0, 1, 2].map((k) => Float64Array.from(rows, (row) => row[k]));
          const { residual } = solveNonnegative(vectors, Float64Array.from([...timeMin, heavy * end]));
          const rss = residual.subarray(0, L.length).reduce((sum, value) => sum + value * value, 0);
          expect(Math.abs(rss - room) / room).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 300 },
    );
    expect(inside).toBeGreaterThan(20);
  });
  it("keeps what a form holds at zero there, unless the bands may bend", () => {
    const line = fitSlabTime({ thicknessMm, timeMin: down, form: "linear" });
    const bent = fitSlabTime({ thicknessMm, timeMin: down, form: "linear", bandForm: "full" });
    expect(slabTimeBand(bent, 25)[1]).toBeGreaterThan(slabTimeBand(line, 25)[1] + 0.5);
    // R-like by hand: ± t s √(1/n + (25 − 10.5)²/Σ(x − 10.5)²)
    const half = intervalFactor(line) * line.residualSd * Math.sqrt(1 / 10 + 14.5 ** 2 / 82.5);
    const { timeMin } = predictSlabTime(line, 25);
    expect(slabTimeBand(line, 25)[1]).toBeCloseTo(timeMin + half, 8);
  });
  it("stays finite for trials at two thicknesses, which leave the bend open", () => {
    const two = fitSlabTime({
      thicknessMm: [8, 8, 12, 12],
      timeMin: [8, 8.4, 12, 12.4],
      form: "linear",
      bandForm: "full",
    });
    const [low, high] = slabTimeBand(two, 20);
    // noiseless, curves through (8, 8.2) and (12, 12.2) reach from t = 0.2 + L to the one with c0 or a at 0
    expect(low).toBeLessThan(20.2);
    expect(high).toBeGreaterThan(8.2 + ((12.2 - 8.2) / (144 - 64)) * (400 - 64));
    expect(high).toBeLessThan(40);
  });
});
