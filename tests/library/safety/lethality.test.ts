import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { simulateSlab } from "../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { lethality } from "../../../kernel-lib/library/src/safety/lethality";
import { food } from "../crisp/sample-food";

describe("lethality", () => {
  it("is minutes at the reference temperature, and tenfold reductions over the decimal time", () => {
    const held = lethality({ timesMin: [0, 2], temperaturesC: [70, 70], referenceC: 70, zK: 7.5, decimalMin: 0.5 });
    expect(held.equivalentMin).toBe(2);
    expect(held.logReduction).toBe(4);
  });

  it("does not change when a straight piece of the trace is cut in two", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 80, noNaN: true }),
        fc.double({ min: 40, max: 80, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (from, to, cut) => {
          const common = { referenceC: 70, zK: 7.5 };
          const whole = lethality({ timesMin: [0, 5], temperaturesC: [from, to], ...common }).equivalentMin;
          const halves = lethality({
            timesMin: [0, 5 * cut, 5],
            temperaturesC: [from, from + (to - from) * cut, to],
            ...common,
          }).equivalentMin;
          expect(Math.abs(halves / whole - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it("takes the core of a solver run, and grows until the run ends", () => {
    const run = simulateSlab({ food, thicknessMm: 10, startC: -18, airC: 200, coefficientWm2K: 40, endMin: 9 });
    const upTo = (rows: number): number =>
      lethality({
        timesMin: run.timeMin.slice(0, rows),
        temperaturesC: run.coreC.slice(0, rows),
        referenceC: 70,
        zK: 7.5,
      }).equivalentMin;
    const rows = run.timeMin.length;
    expect(upTo(rows)).toBeGreaterThan(upTo(rows - 5));
    expect(upTo(rows)).toBeGreaterThan(1);
    expect(upTo(Math.floor(rows / 3))).toBeLessThan(0.01);
  });

  it("refuses times that do not rise and readings that do not pair", () => {
    const common = { referenceC: 70, zK: 7.5 };
    expect(() => lethality({ timesMin: [0, 2, 2], temperaturesC: [60, 61, 62], ...common })).toThrow(
      /time 3 must be later/,
    );
    expect(() => lethality({ timesMin: [0, 2], temperaturesC: [60], ...common })).toThrow(
      /as many of one as of the other/,
    );
    expect(() => lethality({ timesMin: [0, 2], temperaturesC: [60, Number.NaN], ...common })).toThrow(
      /temperature 2 must be a finite number/,
    );
  });

  it("names the hottest reading, wherever it stands", () => {
    const common = { referenceC: 70, zK: 7.5, timesMin: [0, 1, 2] };
    expect(lethality({ ...common, temperaturesC: [60, 72, 65] }).peakC).toBe(72);
    expect(lethality({ ...common, temperaturesC: [73, 72, 65] }).peakC).toBe(73);
  });

  it("keeps its digits where a reading hardly changes: ramps of a few thousandths of a degree, cut in two", () => {
    // from a step of 2e-4 · z / ln 10 on, a ramp and its halves are worked out in two ways
    for (const stepK of [4e-4, 1e-3, 1.2e-3]) {
      const common = { referenceC: 70, zK: 7.5 };
      const whole = lethality({ ...common, timesMin: [0, 2], temperaturesC: [70, 70 + stepK] }).equivalentMin;
      const halves = lethality({
        ...common,
        timesMin: [0, 1, 2],
        temperaturesC: [70, 70 + stepK / 2, 70 + stepK],
      }).equivalentMin;
      expect(Math.abs(halves / whole - 1)).toBeLessThan(1e-13);
      // z/(m ln 10) · (10^(ΔT/z) − 1), m = ΔT/2
      const exact = ((7.5 * 2) / (stepK * Math.LN10)) * Math.expm1((stepK / 7.5) * Math.LN10);
      expect(Math.abs(whole / exact - 1)).toBeLessThan(1e-12);
    }
  });

  it("refuses a single reading, and says how many of each were given", () => {
    const common = { referenceC: 70, zK: 7.5 };
    expect(() => lethality({ timesMin: [0], temperaturesC: [60], ...common })).toThrow("got [1,1]");
    expect(() => lethality({ timesMin: [0, 2], temperaturesC: [60], ...common })).toThrow("got [2,1]");
  });
});
