import { describe, expect, it } from "vitest";
import { USUAL_NOISE } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-noise";
import type { CrispObservation } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-observation";
import type {
  CrispResiduals,
  Measured,
  SharedEffects,
} from "../../../../kernel-lib/library/src/crisp/calibration/crisp-residuals";
import { noiseAgain, sharedCovariance } from "../../../../kernel-lib/library/src/crisp/calibration/shared-covariance";
import { unmeasured } from "../sample-food";

/** A log whose every trial has one measurement, with the effects given for all of them. */
function logOf(trials: readonly Partial<CrispObservation>[], own: Partial<Record<keyof SharedEffects, number>>) {
  const observations = trials.map((trial, at) => ({ ...unmeasured, id: `T-${at + 1}`, session: `s${at}`, ...trial }));
  const problem: CrispResiduals = {
    observations,
    slots: observations.map((_, trial) => ({ trial, kind: "coreK" as Measured, telling: true })),
    residualsAt: () => new Float64Array(observations.length),
    effectsAt: () => effects,
  };
  const all = (value = 0): Float64Array => new Float64Array(observations.length).fill(value);
  const effects: SharedEffects = {
    run: all(own.run),
    thickness: all(own.thickness),
    core: all(own.core),
    crust: all(own.crust),
    brown: all(own.brown),
  };
  return { problem, effects };
}

/** What the first two measurements share, and the first with itself. */
function shares(trials: readonly Partial<CrispObservation>[], own: Partial<Record<keyof SharedEffects, number>>) {
  const { problem, effects } = logOf(trials, own);
  const { lower, whiten } = sharedCovariance(problem, effects, USUAL_NOISE);
  const [a, b, c] = [lower[0], lower[2], lower[3]];
  const [one, other] = whiten(Float64Array.from([1, 2]));
  expect(a * one).toBeCloseTo(1, 12);
  expect(b * one + c * other).toBeCloseTo(2, 12);
  return { own: a * a, both: a * b, last: b * b + c * c };
}

describe("sharedCovariance", () => {
  const apart = { setpointC: 180, thicknessMm: 14 };

  it("is 1 and what a run shares for a measurement alone, nothing between strangers", () => {
    const { own, both, last } = shares([{}, apart], { run: 0.5, thickness: 0.3, core: 0.2, crust: 0.1, brown: 0.4 });
    // sessions scatter half as much as runs
    const all = 1 + 0.25 + 0.25 * 0.25 + 0.09 + 0.04 + 0.01 + 0.16;
    expect(own).toBeCloseTo(all, 12);
    expect(last).toBeCloseTo(all, 12);
    expect(both).toBeCloseTo(0, 12);
  });

  it("shares a slab's thickness, a session's coefficient, a setting's misses", () => {
    expect(shares([{ slab: "a" }, { ...apart, slab: "a" }], { thickness: 0.3 }).both).toBeCloseTo(0.09, 12);
    expect(shares([{ slab: "a" }, { ...apart, slab: "b" }], { thickness: 0.3 }).both).toBe(0);
    expect(shares([{}, {}], { thickness: 0.3 }).both).toBe(0);
    expect(shares([{ session: "m" }, { ...apart, session: "m" }], { run: 0.4 }).both).toBeCloseTo(0.04, 12);
    expect(shares([{}, {}], { core: 0.2, crust: 0.3, brown: 0.4 }).both).toBeCloseTo(0.29, 12);
  });

  it("counts as one setting what is within 3 K, 6 %, a fifth of the floor and 5 mm, and nothing else", () => {
    const alike = (change: Partial<CrispObservation>): boolean =>
      shares([{ sidesMm: [40, 25] }, { sidesMm: [40, 25], ...change }], { core: 0.5 }).both > 0.1;
    expect(alike({})).toBe(true);
    expect(alike({ loadFraction: null })).toBe(true);
    for (const other of [
      { applianceId: "oven" },
      { setpointC: 206 },
      { thicknessMm: 10 },
      { loadFraction: 1 },
      { turned: true },
      { sidesMm: [50, 25] as const },
      { sidesMm: [40, 35] as const },
      { sidesMm: null },
    ])
      expect(alike(other), JSON.stringify(other)).toBe(false);
  });

  it("whitens measurements of one run as one: their covariance is what it was told", () => {
    const { problem, effects } = logOf([{}, { ...apart }], { run: 0.5 });
    const same = { ...problem, slots: problem.slots.map((slot) => ({ ...slot, trial: 0 })) };
    const { lower } = sharedCovariance(same, effects, USUAL_NOISE);
    expect(lower[0] * lower[2]).toBeCloseTo(0.25 + 0.0625, 12);
  });
});

describe("noiseAgain", () => {
  const again = (residuals: number[], own: Partial<Record<keyof SharedEffects, number>> = {}, parameters = 0) => {
    const { problem, effects } = logOf(
      residuals.map((_, at) => ({ setpointC: 150 + 10 * at })),
      own,
    );
    const covariance = sharedCovariance(problem, effects, USUAL_NOISE);
    return noiseAgain(problem, USUAL_NOISE, Float64Array.from(residuals), effects, covariance, parameters);
  };

  it("leaves alone what a log does not tell of", () => {
    const after = again([1, -1, 1]);
    for (const kind of ["crispTime", "lossPercent", "crispScore", "brownScore", "misfit"] as const)
      expect(after[kind]).toBeCloseTo(USUAL_NOISE[kind], 12);
    expect(after.run).toBeCloseTo(USUAL_NOISE.run, 12);
    const none = again([]);
    for (const [kind, size] of Object.entries(USUAL_NOISE))
      expect(none[kind as keyof typeof none]).toBeCloseTo(size, 12);
  });

  it("puts the squares of n measurements beside six usual ones, by hand", () => {
    // nothing shared: the covariance is 1, and w the residual itself
    expect(again([2, -3, 1]).coreK).toBeCloseTo(2.5 * Math.sqrt((6 + 4 + 9 + 1) / 9), 12);
    // constants that are fitted take their part of what is counted: never more than half
    expect(again([2, -3, 1], {}, 3).coreK).toBeCloseTo(2.5 * Math.sqrt(20 / 7.5), 12);
    expect(again([2, -3, 1], {}, 30).coreK).toBeCloseTo(2.5 * Math.sqrt(20 / 7.5), 12);
    expect(again([2, -3, 1], {}, 1).coreK).toBeCloseTo(2.5 * Math.sqrt(20 / (6 + 3 * 0.75)), 12);
  });

  it("leaves measurements out that tell nothing of the scatter", () => {
    const { problem, effects } = logOf([{}, { setpointC: 150 }], {});
    const dumb = { ...problem, slots: problem.slots.map((slot, at) => ({ ...slot, telling: at === 0 })) };
    const covariance = sharedCovariance(dumb, effects, USUAL_NOISE);
    const after = noiseAgain(dumb, USUAL_NOISE, Float64Array.from([2, 50]), effects, covariance, 0);
    expect(after.coreK).toBeCloseTo(2.5 * Math.sqrt(10 / 7), 12);
  });

  it("sizes runs, sessions and settings by the expected squares of their effects, by hand for one trial", () => {
    const d = 0.5;
    const r = 3;
    // one run and its session: Σ = 1 + d² + d²/4; the expected square of a run is (d·r/Σ)² + 1 − d²/Σ
    const sigma = 1 + d * d * 1.25;
    const run = ((d * r) / sigma) ** 2 + 1 - (d * d) / sigma;
    const session = ((0.5 * d * r) / sigma) ** 2 + 1 - (0.25 * d * d) / sigma;
    const after = again([r], { run: d });
    expect(after.run).toBeCloseTo(0.06 * Math.sqrt((6 + run) / 7), 12);
    expect(after.session).toBeCloseTo(0.03 * Math.sqrt((6 + session) / 7), 12);
    // a setting missed by three clocks, of which two say nothing: 6 usual, 3 counted
    const core = ((d * r) / (1 + d * d)) ** 2 + 1 - (d * d) / (1 + d * d);
    expect(again([r], { core: d }).misfit).toBeCloseTo(Math.max(1, Math.sqrt((6 + core + 2) / 9)), 12);
    expect(again([9], { core: 1 }).misfit).toBeGreaterThan(1.4);
    expect(again([0], { core: 1 }).misfit).toBe(1);
  });

  it("adds up what the measurements of one run say together", () => {
    const { problem, effects } = logOf([{}, { setpointC: 150 }], { run: 0.5 });
    const same = { ...problem, slots: problem.slots.map((slot) => ({ ...slot, trial: 0 })) };
    const covariance = sharedCovariance(same, effects, USUAL_NOISE);
    const after = noiseAgain(same, USUAL_NOISE, Float64Array.from([2, 2]), effects, covariance, 0);
    // Σ = I + s·11ᵀ with s = 0.3125: w = r/(1 + 2s), dᵀΣ⁻¹d = 2d²/(1 + 2s)
    const run = ((2 * 0.5 * 2) / 1.625) ** 2 + 1 - 0.5 / 1.625;
    expect(after.run).toBeCloseTo(0.06 * Math.sqrt((6 + run) / 7), 12);
  });
});
