import { describe, expect, it } from "vitest";
import { type PieceTimes, successOverTime } from "../../../../kernel-lib/library/src/crisp/window/success-over-time";

const piecesOf = (rows: [core: number, crisp: number, closes: number][]): PieceTimes => ({
  coreMin: Float64Array.from(rows, ([core]) => core),
  crispMin: Float64Array.from(rows, ([, crisp]) => crisp),
  opensMin: Float64Array.from(rows, ([core, crisp]) => Math.max(core, crisp)),
  closesMin: Float64Array.from(rows, ([, , closes]) => closes),
  typicalCoreMin: Float64Array.from(rows, ([core]) => core),
  scatter: { run: 0.05, piece: 0.05, pieces: 12 },
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
    expect(chances.draws).toBe(4);
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
  });
});
