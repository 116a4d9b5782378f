import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coreMin } from "../../../../kernel-lib/library/src/crisp/clocks/core-clock";
import { modePiece } from "../../../../kernel-lib/library/src/crisp/window/draw-pieces";
import { SAFE_CONFIDENCE } from "../../../../kernel-lib/library/src/crisp/window/load-safety";
import { windowAt } from "../../../../kernel-lib/library/src/crisp/window/window-at";
import { basisOf, NEVER_MIN } from "../../../../kernel-lib/library/src/crisp/window/window-setting";
import { coreTime } from "../../../../kernel-lib/library/src/heat/solver/core-time";
import { coreLimit } from "../../../../kernel-lib/library/src/safety/core-limit";
import { calibrationAt, food, MIDDLE } from "../sample-food";

const SIZE = MIDDLE.length;
const known = calibrationAt(MIDDLE, 0.05);
const nominal = { calibration: known, thicknessMm: 9, applianceId: "basket", setpointC: 200, draws: 400 };

describe("windowAt", () => {
  it("opens at the later of core and crisp, closes at the earlier of brown and dry, and recommends within", () => {
    const window = windowAt(nominal);
    expect(window.opens.min).toBe(Math.max(window.core.min, window.crisp.min));
    expect(window.closes.min).toBe(Math.min(window.brown.min, window.dry.min));
    expect(window.open).toBe(true);
    const { cardMin, timeMin, success, safe } = window.recommended;
    expect(cardMin).toBeGreaterThanOrEqual(timeMin);
    expect(cardMin).toBeGreaterThan(window.opens.min);
    expect(cardMin).toBeLessThan(window.closes.min);
    expect(success).toBeGreaterThan(0.95);
    expect(safe).toBeGreaterThanOrEqual(0.995);
    expect(window.recommended.safeLoads).toBeGreaterThanOrEqual(0.99);
    expect(window.sentence).toContain(`Card: ${cardMin} min`);
  });

  it("says of a closed window which clocks cross, and at what thickness they meet", () => {
    const tooHot = windowAt({ ...nominal, thicknessMm: 3.5, setpointC: 225, tooBrownScore: 0.5 });
    expect(tooHot.open).toBe(false);
    expect(tooHot.sentence).toMatch(/closed\. It is too brown at [\d.]+ min, before the crust is deep enough/);
    const thin = windowAt({ ...nominal, thicknessMm: 3, tooDryPercent: 8 });
    expect(thin.open).toBe(false);
    expect(thin.closedBy).toBe("drying");
    const meets = thin.meetsAtMm as number;
    const width = (thicknessMm: number): number => {
      const { opens, closes } = windowAt({ ...nominal, thicknessMm, tooDryPercent: 8, draws: 100 });
      return closes.min - opens.min;
    };
    expect(width(meets - 0.05)).toBeLessThan(0);
    expect(width(meets + 0.05)).toBeGreaterThan(0);
  });

  it("widens with what is uncertain, and repeats with a seed", () => {
    const vague = windowAt({ ...nominal, calibration: calibrationAt(known.mode, 0.5) });
    const sure = windowAt(nominal);
    expect(vague.opens.interval95[1] - vague.opens.interval95[0]).toBeGreaterThan(
      3 * (sure.opens.interval95[1] - sure.opens.interval95[0]),
    );
    expect(vague.chances.safeFromMin).toBeGreaterThan(sure.chances.safeFromMin);
    expect(windowAt(nominal)).toEqual(sure);
    expect(windowAt({ ...nominal, seed: 2 }).opens.interval95).not.toEqual(sure.opens.interval95);
  });

  it("waits out the hold that a limit asks for, and keeps a core limit's source and caution", () => {
    const fish = coreLimit("fish");
    const held = windowAt({ ...nominal, limit: fish });
    const unheld = windowAt({ ...nominal, limit: { ...fish, holdS: 0 } });
    expect(held.core.min - unheld.core.min).toBeCloseTo(fish.holdS / 60, 9);
    expect(held.limit).toEqual(fish);
  });

  it("moves the window with load and turn as the calibration has it", () => {
    const loose = windowAt(nominal);
    expect(windowAt({ ...nominal, loadFraction: 1 }).opens.min).toBeGreaterThan(1.1 * loose.opens.min);
    expect(windowAt({ ...nominal, turned: true }).opens.min).toBeLessThan(loose.opens.min);
  });

  it("never recommends an unsafe core, never ends a window before it starts, over 600 random kitchens", () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(between(-2, 2), { minLength: SIZE, maxLength: SIZE }),
        between(0.02, 0.7),
        fc.record({
          thicknessMm: between(3, 25),
          setpointC: between(150, 230),
          loadFraction: between(0.1, 1.2),
          startC: between(-30, 15),
          turned: fc.boolean(),
          tooBrownScore: between(1, 8.5),
          tooDryPercent: between(5, 40),
          longestMin: between(5, 40),
          limit: fc.constantFrom(...(["poultry", "groundMeat", "fish", "egg", "plant"] as const)).map(coreLimit),
        }),
        (z, sd, setting) => {
          const calibration = calibrationAt(z, sd);
          const window = windowAt({ ...setting, calibration, applianceId: "basket", draws: 100 });
          const basis = basisOf(calibration, window.setting);
          const slab = modePiece(calibration, window.setting);
          const { cardMin, timeMin, safe, coreC } = window.recommended;
          const { holdS } = window.setting.limit;
          expect(cardMin).toBeGreaterThanOrEqual(timeMin - 1e-9);
          expect(cardMin).toBeGreaterThanOrEqual(window.chances.safeFromMin - 1e-9);
          expect(cardMin).toBeGreaterThanOrEqual(coreMin(basis, slab, setting.thicknessMm) + holdS / 60);
          if (cardMin >= NEVER_MIN) return;
          expect(coreC).toBeGreaterThanOrEqual(setting.limit.limitC - 1e-6);
          // a piece is safe where its load is, and loads are with the stated confidence, to one of 100 draws
          expect(safe).toBeGreaterThanOrEqual(SAFE_CONFIDENCE - 0.01);
          expect(window.recommended.safeLoads).toBeGreaterThanOrEqual(SAFE_CONFIDENCE - 0.02);
          if (window.open) expect(window.closes.min).toBeGreaterThanOrEqual(window.opens.min);
          for (const { min, interval95 } of [window.core, window.opens, window.closes]) {
            expect(min).toBeGreaterThanOrEqual(0);
            expect(interval95[0]).toBeLessThanOrEqual(interval95[1]);
          }
          const thicker = coreMin(basis, slab, 1.1 * setting.thicknessMm);
          expect(thicker).toBeGreaterThan(coreMin(basis, slab, setting.thicknessMm));
        },
      ),
      { numRuns: 600, seed: 42 },
    );
  }, 240_000);

  it("leaves the core of the slab solver safe at its card time", () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(between(5, 20), between(165, 220), between(-0.6, 0.9), (thicknessMm, setpointC, z) => {
        const calibration = calibrationAt([z, ...known.mode.slice(1)], 0.1);
        const window = windowAt({ ...nominal, calibration, thicknessMm, setpointC });
        const { coefficientWm2K } = modePiece(calibration, window.setting);
        const solved = coreTime({ food, thicknessMm, coefficientWm2K, airC: setpointC });
        expect(window.chances.safeFromMin).toBeGreaterThanOrEqual(solved.timeMin);
        expect(window.recommended.cardMin).toBeGreaterThanOrEqual(window.chances.safeFromMin);
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it("leaves more room the further from what was logged, and far outside gives no chance", () => {
    const logged = { ...known.logged!, thicknessMm: [8, 10] as const, setpointC: [190, 205] as const };
    const calibration = { ...known, logged };
    const near = windowAt({ ...nominal, calibration });
    const edge = windowAt({ ...nominal, calibration, thicknessMm: 11.5 });
    const far = windowAt({ ...nominal, calibration, thicknessMm: 18, setpointC: 225 });
    expect([near.standing, edge.standing, far.standing]).toEqual([
      "tried",
      "on the edge of what was tried",
      "outside what was tried",
    ]);
    const spread = (window: typeof near): number => Math.log(window.crisp.interval95[1] / window.crisp.interval95[0]);
    expect(spread(edge)).toBeGreaterThan(spread(near));
    expect(spread(far)).toBeGreaterThan(1.3 * spread(near));
    expect(far.sentence).toContain("no chance is given: log a trial first");
    expect(far.extrapolation).toHaveLength(2);
  });

  it("heats, dries and browns a piece from its edges too", () => {
    const slab = windowAt(nominal);
    const stick = windowAt({ ...nominal, sidesMm: [60, 18] });
    expect(stick.core.min).toBeLessThan(0.85 * slab.core.min);
    expect(stick.dry.min).toBeLessThan(0.85 * slab.dry.min);
    expect(stick.crisp.min).toBeLessThan(slab.crisp.min);
    const wide = windowAt({ ...nominal, sidesMm: [600, 600] });
    expect(wide.core.min / slab.core.min).toBeCloseTo(1, 3);
  });

  it("asks longer of a larger load, as one piece below its limit is one too many", () => {
    const few = windowAt({ ...nominal, piecesPerLoad: 2 });
    const many = windowAt({ ...nominal, piecesPerLoad: 60 });
    expect(many.chances.safeFromMin).toBeGreaterThan(few.chances.safeFromMin);
    expect(many.core).toEqual(few.core);
  });

  it("says when the calibration did not converge", () => {
    expect(windowAt(nominal).doubts).toEqual([]);
    const unsettled = { ...known, converged: false, reason: "stopped after 500 steps" };
    expect(windowAt({ ...nominal, calibration: unsettled }).doubts[0]).toContain(
      "did not converge (stopped after 500 steps)",
    );
  });

  it("refuses settings that cannot be, air without heat among them", () => {
    expect(() => windowAt({ ...nominal, setpointC: 30 })).toThrow(
      "windowAt: setpointC must be between 130 and 290 °C, got 30",
    );
    expect(() => windowAt({ ...nominal, applianceId: "grill" })).toThrow(
      'applianceId must be one of basket, got "grill"',
    );
    expect(() => windowAt({ ...nominal, draws: 10 })).toThrow("draws must be a whole number >= 100");
    expect(() => windowAt({ ...nominal, thicknessMm: 0 })).toThrow("thicknessMm must be between 1 and 60 mm");
  });
});
