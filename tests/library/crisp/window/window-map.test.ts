import { describe, expect, it } from "vitest";
import { largestThickness } from "../../../../kernel-lib/library/src/crisp/window/largest-thickness";
import { loadFactor } from "../../../../kernel-lib/library/src/crisp/window/load-safety";
import { misfitAt } from "../../../../kernel-lib/library/src/crisp/window/misfit-at";
import {
  pieceStock,
  piecesAt,
  safeFromMin,
  scatterAt,
} from "../../../../kernel-lib/library/src/crisp/window/success-over-time";
import { windowAt } from "../../../../kernel-lib/library/src/crisp/window/window-at";
import { windowMapOverSetpoint, windowMapOverTime } from "../../../../kernel-lib/library/src/crisp/window/window-map";
import { windowOverThickness } from "../../../../kernel-lib/library/src/crisp/window/window-over-thickness";
import { basisOf, settle } from "../../../../kernel-lib/library/src/crisp/window/window-setting";
import { calibrationAt, MIDDLE } from "../sample-food";

const calibration = calibrationAt(MIDDLE, 0.1);
const place = { calibration, applianceId: "basket" };
const thicknessesMm = [5, 8, 11, 14, 17, 20];

describe("windowMapOverTime", () => {
  const timesMin = Array.from({ length: 31 }, (_, at) => at);
  const shares: number[] = [];
  const map = windowMapOverTime({
    ...place,
    setpointC: 200,
    thicknessesMm,
    timesMin,
    draws: 400,
    progress: (done) => shares.push(done),
  });

  it("has one row a time, says how far it is, and holds no cell without a safe core", () => {
    expect(map.success.length).toBe(31);
    expect(map.success.every((row) => row.length === thicknessesMm.length)).toBe(true);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    for (const [column, thicknessMm] of thicknessesMm.entries()) {
      const { chances } = windowAt({ ...place, setpointC: 200, thicknessMm, draws: 400 });
      for (const [row, time] of timesMin.entries())
        if (time < chances.safeFromMin) expect(map.success[row][column]).toBe(0);
    }
  });

  it("has the chances of the window of each thickness, where they are safe", () => {
    let compared = 0;
    for (const [column, thicknessMm] of thicknessesMm.entries()) {
      const { chances } = windowAt({ ...place, setpointC: 200, thicknessMm, draws: 400 });
      for (const [row, time] of timesMin.entries()) {
        if (time < chances.safeFromMin) continue;
        const after = chances.timesMin.findIndex((each) => each >= time);
        if (after < 1) continue;
        compared++;
        const [low, high] = [chances.success[after - 1], chances.success[after]].toSorted((a, b) => a - b);
        expect(map.success[row][column]).toBeGreaterThanOrEqual(low - 0.01);
        expect(map.success[row][column]).toBeLessThanOrEqual(high + 0.01);
      }
    }
    expect(compared).toBeGreaterThan(20);
  });
});

describe("windowMapOverSetpoint", () => {
  it("gives each cell its own best time within the accepted one", () => {
    const map = windowMapOverSetpoint({
      ...place,
      thicknessesMm,
      setpointsC: [170, 190, 210],
      draws: 300,
      longestMin: 15,
    });
    expect(map.bestMin?.[1]).toHaveLength(thicknessesMm.length);
    expect(map.success[2][1]).toBeGreaterThan(0.95);
    expect(map.success[0][5]).toBe(0);
    for (const row of map.success)
      for (let at = 2; at < row.length; at++) expect(row[at]).toBeLessThanOrEqual(row[at - 1] + 0.02);
    for (let row = 0; row < 3; row++)
      for (let at = 0; at < thicknessesMm.length; at++)
        if (map.success[row][at] > 0) expect((map.bestMin as number[][])[row][at]).toBeLessThanOrEqual(15);
  });

  it("is the best of each cell's own pieces: no time from the safe one on does better, by trying all", () => {
    const options = { ...place, thicknessesMm: [4, 6, 10], setpointsC: [165, 185, 215], draws: 300, longestMin: 16 };
    const map = windowMapOverSetpoint(options);
    const stock = pieceStock(calibration, { count: 300, seed: 1 });
    options.setpointsC.forEach((setpointC, row) => {
      options.thicknessesMm.forEach((thicknessMm, column) => {
        const setting = settle({ applianceId: "basket", thicknessMm, setpointC, longestMin: 16 }, "test");
        const basis = basisOf(calibration, setting);
        const pieces = piecesAt(stock, basis, setting, misfitAt(calibration, setting, basis.coreError));
        const first = loadFactor(scatterAt(calibration, basis, { ...setting, thicknessMm: 4 }));
        const from = safeFromMin(pieces, first);
        let best = 0;
        for (const time of [from, ...pieces.opensMin]) {
          if (time < from || time > 16) continue;
          const good = pieces.opensMin.filter((opens, at) => opens <= time && pieces.closesMin[at] >= time).length;
          best = Math.max(best, good / 300);
        }
        expect(map.success[row][column]).toBeCloseTo(best, 9);
        if (best === 0) expect((map.bestMin as number[][])[row][column]).toBe(from);
        else expect((map.bestMin as number[][])[row][column]).toBeGreaterThanOrEqual(from);
      });
    });
  });

  it("refuses axes that do not rise", () => {
    expect(() => windowMapOverSetpoint({ ...place, thicknessesMm: [8, 5], setpointsC: [180] })).toThrow(
      "thicknessesMm must rise",
    );
    expect(() => windowMapOverSetpoint({ ...place, thicknessesMm, setpointsC: [] })).toThrow(
      "setpointsC must not be empty",
    );
  });
});

describe("largestThickness", () => {
  it("is where the window ends or the accepted time runs out", () => {
    const largest = largestThickness({ ...place, setpointC: 200, longestMin: 14 });
    expect(largest.endedBy).toBe("time");
    const { opens } = windowAt({ ...place, setpointC: 200, thicknessMm: largest.thicknessMm });
    expect(opens.min).toBeCloseTo(14, 1);
    expect(largest.interval95[0]).toBeLessThan(largest.thicknessMm);
    expect(largest.interval95[1]).toBeGreaterThan(largest.thicknessMm);
    const hotter = largestThickness({ ...place, setpointC: 215, longestMin: 14 });
    expect(hotter.thicknessMm).toBeGreaterThan(largest.thicknessMm);
    expect(largestThickness({ ...place, setpointC: 200, longestMin: 1 }).thicknessMm).toBe(0);
    // a thin crust, so that 1 mm has a window; and no more time than 1.4 mm asks for
    const crustAt = calibration.constants.findIndex(({ name }) => name === "crustDepth");
    const thin = {
      calibration: calibrationAt(MIDDLE.with(crustAt, -2), 0.1),
      applianceId: "basket",
      setpointC: 200,
      tooDryPercent: 80,
      tooBrownScore: 8.9,
    };
    const { opens: opensThin } = windowAt({ ...thin, thicknessMm: 1.4, draws: 100 });
    expect(largestThickness({ ...thin, longestMin: opensThin.min }).thicknessMm).toBeCloseTo(1.4, 3);
    // a slab that is too brown before its core is safe
    const brown = largestThickness({ ...place, setpointC: 230, longestMin: 60, tooBrownScore: 3 });
    expect(brown.endedBy).toBe("window");
    const { opens: last, closes } = windowAt({
      ...place,
      setpointC: 230,
      thicknessMm: brown.thicknessMm,
      tooBrownScore: 3,
    });
    expect(last.min / closes.min).toBeCloseTo(1, 2);
    expect(
      largestThickness({ ...place, setpointC: 200, longestMin: 500, tooBrownScore: 8.9, tooDryPercent: 80 }),
    ).toMatchObject({
      longestMin: 500,
    });
  });
});

describe("windowOverThickness", () => {
  it("has the moments of windowAt at every thickness", () => {
    const over = windowOverThickness({ ...place, setpointC: 200, thicknessesMm });
    for (const [at, thicknessMm] of thicknessesMm.entries()) {
      const window = windowAt({ ...place, setpointC: 200, thicknessMm, draws: 300 });
      expect(over.opens[at]).toEqual(window.opens);
      expect(over.closes[at]).toEqual(window.closes);
      expect(over.core[at]).toEqual(window.core);
    }
  });
});
