import { describe, expect, it } from "vitest";
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

  it("takes the safe time from the tail that few draws do not show", () => {
    const few = Float64Array.from([9, 10, 11, 10.5, 9.5]);
    expect(safeFromMin(few)).toBeGreaterThan(11);
    const skewed = Float64Array.from({ length: 1000 }, (_, at) => (at < 10 ? 30 : 10));
    expect(safeFromMin(skewed)).toBe(30);
  });
});
