import { describe, expect, it } from "vitest";
import { browningOf } from "../../../../kernel-lib/library/src/crisp/clocks/browning-clock";
import { coreMin } from "../../../../kernel-lib/library/src/crisp/clocks/core-clock";
import { crispMin, crustMmAt, lossPercentOf } from "../../../../kernel-lib/library/src/crisp/clocks/crust-clock";
import { LOOSE_LOAD } from "../../../../kernel-lib/library/src/crisp/clocks/load-effect";
import { brownScoreAt } from "../../../../kernel-lib/library/src/crisp/clocks/panel-score";
import {
  basisOf,
  momentsOf,
  NEVER_MIN,
  safeCoreMin,
  settle,
} from "../../../../kernel-lib/library/src/crisp/window/window-setting";
import { bareSlab, calibrationAt, MIDDLE } from "../sample-food";

describe("settle", () => {
  const least = { thicknessMm: 9, applianceId: "basket", setpointC: 200 };

  it("fills in what is usual, and counts what is undefined as left out", () => {
    const settled = settle(least, "here");
    expect(settled).toMatchObject({ loadFraction: LOOSE_LOAD, tooBrownScore: 7, tooDryPercent: 25, longestMin: 30 });
    expect(settle({ ...least, loadFraction: undefined, tooBrownScore: undefined, limit: undefined }, "here")).toEqual(
      settled,
    );
  });

  it("keeps what is given", () => {
    expect(settle({ ...least, loadFraction: 0.9, sidesMm: [40, 30] }, "here")).toMatchObject({
      loadFraction: 0.9,
      sidesMm: [40, 30],
    });
  });

  it("refuses each value outside its range, and takes the range's ends", () => {
    const ranges: readonly [string, number, number][] = [
      ["thicknessMm", 1, 60],
      ["piecesPerLoad", 1, 300_000],
      ["setpointC", 130, 290],
      ["loadFraction", 0, 1.2],
      ["startC", -40, 40],
      ["tooBrownScore", 0.5, 8.9],
      ["tooDryPercent", 1, 80],
    ];
    for (const [name, low, high] of ranges) {
      for (const end of [low, high]) expect(settle({ ...least, [name]: end }, "here")).toMatchObject({ [name]: end });
      for (const past of [low - 0.01, high + 0.01])
        expect(() => settle({ ...least, [name]: past }, "here"), name).toThrow(`here: ${name} must be between ${low}`);
    }
    expect(() => settle({ ...least, longestMin: 0 }, "here")).toThrow("longestMin must be > 0 min");
    expect(() => settle({ ...least, sidesMm: [40, 2] }, "here")).toThrow(
      "sidesMm must be between 3 and 1000 mm, got 2",
    );
    expect(() => settle({ ...least, sidesMm: [1001, 40] }, "here")).toThrow("sidesMm must be between 3 and 1000 mm");
  });

  it("refuses what cannot be, naming who asked", () => {
    expect(() => settle({ ...least, setpointC: 400 }, "here")).toThrow(
      "here: setpointC must be between 130 and 290 °C",
    );
  });
});

describe("the moments of a piece", () => {
  const setting = settle({ thicknessMm: 9, applianceId: "basket", setpointC: 200, tooDryPercent: 12 }, "here");
  const basis = basisOf(calibrationAt(MIDDLE, 0.1), setting);
  const piece = { ...bareSlab, crustWaterKgM3: 400, coatingMm: 0.5, dripFraction: 0.01, browningPerS: 7e-3 };

  it("are those of the clocks, the core held as long as its limit asks", () => {
    const moments = momentsOf(basis, piece, 9, setting);
    expect(moments.coreMin).toBe(coreMin(basis, piece, 9));
    expect(moments.crispMin).toBeCloseTo(crispMin(basis, piece, 9), 12);
    const at = (minutes: number): number => crustMmAt(basis, piece, 9, minutes);
    expect(lossPercentOf(basis, piece, 9, at(moments.dryMin))).toBeCloseTo(12, 8);
    expect(brownScoreAt(browningOf(basis, piece, 9, at(moments.brownMin)), 1)).toBeCloseTo(7, 4);
    const held = { ...setting, limit: { ...setting.limit, holdS: 90 } };
    expect(safeCoreMin(basis, piece, 9, held)).toBeCloseTo(coreMin(basis, piece, 9) + 1.5, 12);
    expect(momentsOf(basis, piece, 9, held).coreMin).toBe(safeCoreMin(basis, piece, 9, held));
    expect(safeCoreMin(basis, { ...piece, plateauC: 70 }, 9, setting)).toBe(NEVER_MIN);
  });

  it("are never before the start for what is dry at once, and never for a crust deeper than the piece", () => {
    expect(momentsOf(basis, { ...piece, dripFraction: 0.2 }, 9, setting).dryMin).toBe(0);
    expect(momentsOf(basis, { ...piece, crustMm: 4.5 }, 9, setting).crispMin).toBeLessThan(1e4);
    expect(momentsOf(basis, { ...piece, crustMm: 4.51 }, 9, setting).crispMin).toBe(Number.POSITIVE_INFINITY);
  });

  it("work in air a little below the setpoint on a crowded floor", () => {
    const crowded = settle({ ...setting, loadFraction: 1 }, "here");
    expect(basisOf(calibrationAt(MIDDLE, 0.1), crowded).airC).toBeCloseTo(195, 12);
    expect(basis).toMatchObject({ airC: 200, startC: -18, limitC: setting.limit.limitC });
  });
});
