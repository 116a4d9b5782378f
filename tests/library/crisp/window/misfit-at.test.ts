import { describe, expect, it } from "vitest";
import { misfitAt } from "../../../../kernel-lib/library/src/crisp/window/misfit-at";
import { settle, type WindowSetting } from "../../../../kernel-lib/library/src/crisp/window/window-setting";
import { calibrationAt, MIDDLE } from "../sample-food";

const logged = {
  thicknessMm: [8, 12] as const,
  setpointC: [190, 205] as const,
  startC: [-20, -12] as const,
  loadFraction: [0.5, 0.8] as const,
  sideMm: [20, 30] as const,
  turned: false,
  unturned: true,
};
const base = calibrationAt(MIDDLE, 0.1);
const calibration = {
  ...base,
  logged,
  constants: base.constants.map((constant) => ({ ...constant, informed: true })),
};
const inside: WindowSetting = {
  thicknessMm: 10,
  applianceId: "basket",
  setpointC: 200,
  startC: -18,
  loadFraction: 0.6,
  sidesMm: [25, 25],
};
const at = (change: Partial<WindowSetting>) => misfitAt(calibration, settle({ ...inside, ...change }, "test"), 0);

describe("misfitAt", () => {
  it("counts as tried all that was logged, its very ends too", () => {
    const ends: readonly Partial<WindowSetting>[] = [
      {},
      { thicknessMm: 8 },
      { thicknessMm: 12 },
      { setpointC: 190 },
      { setpointC: 205 },
      { startC: -20 },
      { startC: -12 },
      { loadFraction: 0.5 },
      { loadFraction: 0.8 },
      { sidesMm: [20, 20] },
      { sidesMm: [30, 30] },
    ];
    for (const change of ends) expect(at(change)).toMatchObject({ distance: 0, outside: [] });
  });
  it("is one unit off a third thicker or thinner, 15 K, 20 K of start, half the floor, twice the side", () => {
    const units: readonly Partial<WindowSetting>[] = [
      { thicknessMm: 16 },
      { thicknessMm: 6 },
      { setpointC: 220 },
      { setpointC: 175 },
      { startC: 8 },
      { startC: -40 },
      { loadFraction: 0 },
      { sidesMm: [60, 60] },
      { sidesMm: [10, 10] },
      { turned: true },
    ];
    for (const change of units) {
      const { distance, outside } = at(change);
      expect(distance).toBeCloseTo(1, 9);
      expect(outside).toHaveLength(1);
    }
    expect(at({ thicknessMm: 16, setpointC: 220 }).distance).toBeCloseTo(Math.SQRT2, 9);
    expect(at({ loadFraction: 1.2 }).distance).toBeCloseTo(0.8, 9);
  });
  it("grows the misfit of every clock with the distance, and is furthest without a trial", () => {
    const near = at({});
    const far = at({ setpointC: 235 });
    for (const clock of ["core", "crust", "brown"] as const) expect(far[clock]).toBeGreaterThan(near[clock]);
    const none = misfitAt({ ...calibration, logged: null }, settle(inside, "test"), 0);
    expect(none.distance).toBe(2);
    expect(none.outside).toEqual(["no trial of it was logged"]);
  });
});
