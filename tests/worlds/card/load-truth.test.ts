import { describe, expect, it } from "vitest";
import { minuteOf } from "../plan/course-emulator";
import { planKitchen } from "../plan/plan-ways";
import { shareAt } from "../score";
import { limitOf } from "../world";
import { coldLoadsAt, loadTruth, safeLoadsFrom } from "./load-truth";

const STILL = {
  session: 0,
  run: 0,
  place: 0,
  slab: 0,
  unevenness: 0,
  coatBatch: 0,
  coatPiece: 0,
  crispDepth: 0,
  browning: 0,
};

describe("loadTruth", () => {
  // bare and turned; coated and held at its limit
  it.each([1, 2, 9])("is the stored truth of the own setting of kitchen %d, drawn anew", (at) => {
    const { world, emulator, stored } = planKitchen(at);
    const { setting, truth } = stored.settings[0];
    const loads = loadTruth({ world, emulator, setting, loads: 4000, seed: 5 });
    expect(loads.piecesInLoad).toBe(truth.piecesInLoad);
    expect(Math.abs(loads.typicalMin / truth.typical.coreMin - 1)).toBeLessThan(0.015);
    const from = safeLoadsFrom(loads, 0.99);
    expect(shareAt(truth, truth.safeLoads, 0.985 * from)).toBeLessThan(0.993);
    expect(shareAt(truth, truth.safeLoads, 1.015 * from)).toBeGreaterThan(0.986);
    expect(coldLoadsAt(loads, from)).toBe(40);
    expect(coldLoadsAt(loads, 0)).toBe(4000);
    expect(coldLoadsAt(loads, 1000)).toBe(0);
  });

  it("is the emulator's own time where nothing scatters", () => {
    const { world, emulator, stored } = planKitchen(2);
    const { setting } = stored.settings[0];
    const { limitC, holdS } = limitOf(world.product);
    for (const thicker of [0.8, 1, 1.3]) {
      const place = { ...setting, thicknessMm: thicker * setting.thicknessMm };
      const { safeMin } = loadTruth({
        world: { ...world, scatter: STILL },
        emulator,
        setting: place,
        loads: 2,
        seed: 1,
      });
      const { coreC } = emulator.minutesAt({ ...place, coefficient: 1, coat: 1 });
      expect(safeMin[0]).toBeCloseTo(minuteOf(emulator.courses.levels.coreC, coreC, limitC) + holdS / 60, 4);
    }
  });
});
