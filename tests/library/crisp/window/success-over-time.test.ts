import { describe, expect, it } from "vitest";
import { loadFactor, safeFrom, wholeLoadSafe } from "../../../../kernel-lib/library/src/crisp/window/load-safety";
import {
  type PieceTimes,
  safeFromMin,
  successOverTime,
} from "../../../../kernel-lib/library/src/crisp/window/success-over-time";

const piecesOf = (rows: [core: number, crisp: number, closes: number][]): PieceTimes => ({
  coreMin: Float64Array.from(rows, ([core]) => core),
  crispMin: Float64Array.from(rows, ([, crisp]) => crisp),
  opensMin: Float64Array.from(rows, ([core, crisp]) => Math.max(core, crisp)),
  closesMin: Float64Array.from(rows, ([, , closes]) => closes),
  typicalCoreMin: Float64Array.from(rows, ([core]) => core),
  scatter: { run: 0.05, piece: 0.05, pieces: 12, doubt: 0 },
});

describe("successOverTime", () => {
  it("counts the pieces that are safe, crisp and not overdone, and never one whose window is shut", () => {
    const pieces = piecesOf([
      [4, 6, 10],
      [5, 7, 9],
      [8, 6, 12],
      [6, 9, 8],
    ]);
    const chances = successOverTime(pieces, [5, 6.5, 7.5, 8.5, 9.5, 11, 13]);
    expect(chances.success).toEqual([0, 0.25, 0.5, 0.75, 0.5, 0.25, 0]);
    expect(chances.safe).toEqual([0.5, 0.75, 0.75, 1, 1, 1, 1]);
    expect(chances.overdone).toEqual([0, 0, 0, 0.25, 0.5, 0.75, 1]);
    expect(chances.crisp).toEqual([0, 0.5, 0.75, 0.75, 1, 1, 1]);
    expect(chances.draws).toBe(4);
    // at the very minute it is safe, open and overdone
    const sharp = successOverTime(pieces, [5, 6, 7, 9]);
    expect(sharp.safe).toEqual([0.5, 0.75, 0.75, 1]);
    expect(sharp.crisp).toEqual([0, 0.5, 0.75, 1]);
    expect(sharp.success).toEqual([0, 0.25, 0.5, 0.5]);
  });

  it("asks more of a whole load than of a piece, and nothing of a load before its cores are near", () => {
    const pieces = piecesOf([
      [6, 6, 20],
      [6, 6, 20],
    ]);
    const { safeLoads } = successOverTime(pieces, [3, 6, 6.6, 9]);
    expect(safeLoads[0]).toBe(0);
    expect(safeLoads[1]).toBeLessThan(0.1);
    expect(safeLoads[2]).toBeLessThan(1);
    expect(safeLoads[3]).toBeGreaterThan(0.999);
    // from a table of 81 places, against the integral itself
    const times = [5.8, 6.3, 6.6, 7, 7.7];
    successOverTime(pieces, times).safeLoads.forEach((chance, at) => {
      expect(Math.abs(chance - wholeLoadSafe(pieces.scatter, Math.log(times[at] / 6)))).toBeLessThan(0.004);
    });
    expect(successOverTime(pieces, [0, -1, 1e3]).safeLoads).toEqual([0, 0, successOverTime(pieces, [17]).safeLoads[0]]);
  });

  it("averages whole loads over what is uncertain of the typical core, and is safe from where it says", () => {
    const pieces = piecesOf([
      [6, 6, 20],
      [9, 6, 20],
    ]);
    const { safeLoads, safeFromMin: from } = successOverTime(pieces, [7.4]);
    const chance = (typical: number) => wholeLoadSafe(pieces.scatter, Math.log(7.4 / typical));
    expect(safeLoads[0]).toBeCloseTo((chance(6) + chance(9)) / 2, 2);
    expect(from).toBe(safeFrom(pieces.typicalCoreMin, loadFactor(pieces.scatter), 0));
    expect(safeFromMin(pieces, 2)).toBe(safeFrom(pieces.typicalCoreMin, 2, 0));
  });
});
