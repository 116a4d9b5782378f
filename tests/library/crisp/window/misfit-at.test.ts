import { describe, expect, it } from "vitest";
import { misfitAt, standingOf } from "../../../../kernel-lib/library/src/crisp/window/misfit-at";
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
  it("says in words what lies outside, and keeps quiet about a sixth of a unit", () => {
    const said = (change: Partial<WindowSetting>) => at(change).outside;
    expect(said({ thicknessMm: 16 })).toEqual(["16.0 mm is outside the trials, 8.0 to 12.0 mm"]);
    expect(said({ setpointC: 220 })).toEqual(["220 °C is outside the trials, 190 to 205 °C"]);
    expect(said({ loadFraction: 1.1 })).toEqual(["110 % of the floor is outside the trials, 50 to 80 %"]);
    expect(said({ startC: 4 })).toEqual(["a start at 4 °C is outside the trials, -20 to -12 °C"]);
    expect(said({ sidesMm: [60, 60] })).toEqual(["pieces of 60 × 60 mm are larger than those logged"]);
    expect(said({ sidesMm: [12, 8] })).toEqual(["pieces of 12 × 8 mm are smaller than those logged"]);
    expect(said({ thicknessMm: 16, units: "us" })).toEqual([
      "5/8 in (16.0 mm) is outside the trials, 5/16 to 15/32 in (8.0 to 12.0 mm)",
    ]);
    expect(said({ startC: 4, units: "us" })).toEqual(["a start at 39.2 °F is outside the trials, -4 to 10.4 °F"]);
    expect(said({ turned: true })).toEqual(["no turned pieces were logged"]);
    expect(said({ setpointC: 207.5 })).toEqual([]);
    expect(at({ setpointC: 207.5 }).distance).toBeCloseTo(1 / 6, 9);
    expect(said({ setpointC: 207.6 })).toHaveLength(1);
  });
  it("counts turned logs for unturned pieces as far, and an appliance whose trials tell nothing of it", () => {
    const turnedOnly = { ...calibration, logged: { ...logged, turned: true, unturned: false } };
    expect(misfitAt(turnedOnly, settle(inside, "test"), 0)).toMatchObject({
      distance: 1,
      outside: ["only turned pieces were logged"],
    });
    expect(misfitAt(turnedOnly, settle({ ...inside, turned: true }, "test"), 0).distance).toBe(0);
    const constants = calibration.constants.map((constant, place) => ({ ...constant, informed: place > 0 }));
    expect(misfitAt({ ...calibration, constants }, settle(inside, "test"), 0)).toMatchObject({
      distance: 1,
      outside: ["none of its trials in basket tells of the coefficient"],
    });
    const uncut = { ...calibration, logged: { ...logged, sideMm: null } };
    expect(misfitAt(uncut, settle({ ...inside, sidesMm: [300, 300] }, "test"), 0).distance).toBe(0);
  });
  it("adds floor, growth with distance, which piece was probed and, away from the log, the short forms' own error as squares, by hand", () => {
    const of = (change: Partial<WindowSetting>, coreError: number, misfit: number) =>
      misfitAt(
        { ...calibration, noise: { ...base.noise, misfit } },
        settle({ ...inside, ...change }, "test"),
        coreError,
      );
    // half of a standard deviation of the slab's pieces, at the power 1.3
    const probed = 0.5 * 1.3 * 0.03;
    const near = of({ sidesMm: null }, 0.03, 1);
    expect(near.core).toBeCloseTo(Math.hypot(0.022, probed), 12);
    expect(near.crust).toBeCloseTo(Math.hypot(0.03, 0.018), 12);
    expect(near.brown).toBeCloseTo(0.1, 12);
    expect(of({ setpointC: 212.5 }, 0.03, 1).core).toBeCloseTo(
      Math.hypot(0.022, 0.0075, probed, 0.5 * Math.hypot(0.03, 0.018)),
      12,
    );
    const far = of({ setpointC: 235, sidesMm: null }, 0.03, 2);
    expect(far.core).toBeCloseTo(Math.hypot(0.044, 0.03, probed, 0.03), 12);
    expect(far.crust).toBeCloseTo(Math.hypot(0.06, 0.06, 0.018), 12);
    expect(far.brown).toBeCloseTo(Math.hypot(0.2, 0.2), 12);
  });
  it("stands by its distance: tried below 0.17, from where words say so too, outside from 1.2 on", () => {
    const standing = (distance: number) => standingOf({ ...at({}), distance });
    expect([standing(0), standing(0.16), standing(0.17), standing(1.19), standing(1.2)]).toEqual([
      "tried",
      "tried",
      "on the edge of what was tried",
      "on the edge of what was tried",
      "outside what was tried",
    ]);
  });
  it("says in words that a setting lies outside exactly where it does not stand as tried, one thing changed", () => {
    const changes = Array.from({ length: 400 }, (_, step) => step / 10).flatMap((by): Partial<WindowSetting>[] => [
      { setpointC: 205 + by },
      { setpointC: 190 - by },
      { thicknessMm: 12 + by / 10 },
      { startC: -12 + by },
    ]);
    for (const change of changes) {
      const misfit = at(change);
      expect(misfit.outside.length > 0, JSON.stringify(change)).toBe(standingOf(misfit) !== "tried");
    }
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
