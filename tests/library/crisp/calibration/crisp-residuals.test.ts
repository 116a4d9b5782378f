import { describe, expect, it } from "vitest";
import {
  pieceCoreSpread,
  probedMm,
  USUAL_NOISE,
} from "../../../../kernel-lib/library/src/crisp/calibration/crisp-noise";
import type { CrispObservation } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-observation";
import { crispPriors } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-priors";
import { crispResiduals } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-residuals";
import { pieceAt } from "../../../../kernel-lib/library/src/crisp/calibration/piece-at";
import { browningOf } from "../../../../kernel-lib/library/src/crisp/clocks/browning-clock";
import { clockBasis } from "../../../../kernel-lib/library/src/crisp/clocks/clock-basis";
import { coreReadingC } from "../../../../kernel-lib/library/src/crisp/clocks/core-clock";
import { crispMin, crustMmAt, lossPercentOf } from "../../../../kernel-lib/library/src/crisp/clocks/crust-clock";
import { brownScoreAt, crispScoreAt, meanWritten } from "../../../../kernel-lib/library/src/crisp/clocks/panel-score";
import { food, unmeasured } from "../sample-food";

const applianceIds = ["basket"];
const UNEVENNESS = 0.03;
/** the piece that is probed of a slab of 9 mm */
const PROBED_MM = probedMm(9, UNEVENNESS);
const priors = crispPriors({ applianceIds, crustWaterKgM3: 400, coated: true });
const z = priors.map(() => 0);
const innerWaterKgM3 = food.densityKgM3 * food.waterFraction;
const trial: CrispObservation = { ...unmeasured, timeMin: 16, sidesMm: [45, 30], thicknessSeMm: 0.3 };
const basis = clockBasis({ food, startC: -18, airC: 200, limitC: 74 });
const piece = pieceAt({
  values: priors.map(({ middle }) => middle),
  applianceIds,
  place: trial,
  coatingMm: 0.5,
  innerWaterKgM3,
});
const problemOf = (...observations: CrispObservation[]) =>
  crispResiduals({ food, observations, applianceIds, priors, coatingMm: 0.5, unevenness: UNEVENNESS });
const residualsOf = (...observations: CrispObservation[]): number[] => [
  ...problemOf(...observations).residualsAt(z, USUAL_NOISE),
];

describe("crispResiduals", () => {
  const depthMm = crustMmAt(basis, piece, 9, 16);

  it("has a place for what was measured, in one order, and knows which checks tell of the scatter", () => {
    const { slots } = problemOf(
      { ...trial, notCrispMin: 12, crispMin: 14, coreC: 80, restedCoreC: 84, lossPercent: 12 },
      trial,
      { ...trial, notCrispMin: 12, crispScores: [5], brownScores: [3, 4] },
      { ...trial, crispMin: 12 },
    );
    expect(slots.map(({ trial: of, kind, telling }) => [of, kind, telling])).toEqual([
      [0, "crispTime", true],
      [0, "coreK", true],
      [0, "coreK", true],
      [0, "lossPercent", true],
      [2, "crispTime", false],
      [2, "crispScore", true],
      [2, "brownScore", true],
      [3, "crispTime", false],
    ]);
  });

  it("is nothing where a trial reads what the clocks say", () => {
    const crispAt = crispMin(basis, piece, 9);
    const read = {
      ...trial,
      notCrispMin: crispAt * 0.999,
      crispMin: crispAt / 0.999,
      coreC: coreReadingC(basis, piece, PROBED_MM, 16, false),
      restedCoreC: coreReadingC(basis, piece, PROBED_MM, 16, true),
      lossPercent: lossPercentOf(basis, piece, 9, depthMm),
      crispScores: [meanWritten(crispScoreAt(depthMm, piece.crustMm, piece.panelWidthMm), 0.8)],
      brownScores: [meanWritten(brownScoreAt(browningOf(basis, piece, 9, depthMm), piece.brownSteepness), 0.8)],
    };
    for (const residual of residualsOf(read)) expect(Math.abs(residual)).toBeLessThan(1e-6);
  });

  it("counts loss and scores over their scatter, three tasters as one that is √3 surer", () => {
    const loss = lossPercentOf(basis, piece, 9, depthMm);
    expect(residualsOf({ ...trial, lossPercent: loss + 1.6 })[0]).toBeCloseTo(2, 9);
    const score = meanWritten(crispScoreAt(depthMm, piece.crustMm, piece.panelWidthMm), 0.8);
    expect(residualsOf({ ...trial, crispScores: [score - 0.8] })[0]).toBeCloseTo(-1, 9);
    expect(residualsOf({ ...trial, crispScores: [score - 1, score - 0.8, score - 0.6] })[0]).toBeCloseTo(
      -Math.sqrt(3),
      9,
    );
  });

  it("counts a core reading over probe and piece scatter, and lets one far off pull no harder than 2.5 of them", () => {
    const own = coreReadingC(basis, piece, PROBED_MM, 9, false);
    const later = 9 * (1 + pieceCoreSpread(UNEVENNESS));
    const sd = Math.hypot(2.5, coreReadingC(basis, piece, PROBED_MM, later, false) - own);
    const read = (off: number): number => residualsOf({ ...trial, timeMin: 9, coreC: own + off * sd })[0];
    expect(read(2)).toBeCloseTo(2, 9);
    expect(read(-2.5)).toBeCloseTo(-2.5, 9);
    // beyond, its square grows as its size: 2·2.5·10 − 2.5²
    expect(read(10) ** 2).toBeCloseTo(43.75, 6);
    expect(read(-10)).toBeCloseTo(-Math.sqrt(43.75), 6);
  });

  it("knows one side of a crisp time where the other was not seen; a first look at 0 min is no side", () => {
    const crispAt = crispMin(basis, piece, 9);
    const of = (notCrispMin: number | null, crisp: number | null): number =>
      residualsOf({ ...trial, timeMin: 40, notCrispMin, crispMin: crisp })[0];
    expect(of(crispAt, null)).toBeCloseTo(Math.sqrt(2 * Math.log(2)), 6);
    expect(of(null, crispAt)).toBeCloseTo(-Math.sqrt(2 * Math.log(2)), 6);
    expect(of(0, crispAt)).toBe(of(null, crispAt));
    expect(Math.abs(of(crispAt * 0.5, null))).toBeLessThan(1e-6);
    // a narrow pair is the logarithm over its scatter
    expect(of(1.0799 * crispAt, 1.0801 * crispAt)).toBeCloseTo(Math.log(1.08) / 0.04, 3);
  });

  it("takes off what each look before took: from the core the piece's own time, from loss and checks the usual", () => {
    const of = (change: Partial<CrispObservation>): number => residualsOf({ ...trial, ...change })[0];
    const looksMin = [6, 8, 10, 12];
    // four of 0.2 min; one at taking out is none
    expect(of({ lossPercent: 10, looksMin: [...looksMin, 16] })).toBe(of({ lossPercent: 10, timeMin: 15.2 }));
    expect(of({ lossPercent: 10, looksMin })).toBeGreaterThan(of({ lossPercent: 10 }));
    const slow = z.map((_, at) => (priors[at].name === "coreLook" ? 1 : 0));
    const core = (at: number[], change: Partial<CrispObservation>): number =>
      problemOf({ ...trial, coreC: 70, timeMin: 9, ...change }).residualsAt(at, USUAL_NOISE)[0];
    expect(core(z, { looksMin: [5, 7] })).toBe(core(z, { timeMin: 8.6 }));
    // the prior's spread is a factor of 2
    expect(core(slow, { looksMin: [5, 7] })).toBeCloseTo(core(z, { timeMin: 8.2 }), 9);
    const loss = (at: number[]): number =>
      problemOf({ ...trial, lossPercent: 10, looksMin }).residualsAt(at, USUAL_NOISE)[0];
    expect(loss(slow)).toBe(loss(z));
    const crispAt = crispMin(basis, piece, 9);
    // at the check of 20 min the looks at 5 and 10 are past, that of the check itself is not
    const check = residualsOf({
      ...trial,
      timeMin: 40,
      looksMin: [5, 10, 20],
      notCrispMin: 20 - 1e-4,
      crispMin: 20,
    })[0];
    expect(check).toBeCloseTo(Math.log(19.6 / crispAt) / 0.04, 2);
  });

  it("keeps trials at other airs and starts apart", () => {
    const trials = [trial, { ...trial, setpointC: 180 }, { ...trial, startC: 2 }, { ...trial, thicknessMm: 12 }].map(
      (seen) => ({ ...seen, coreC: 70, lossPercent: 10, brownScores: [4] }),
    );
    expect(residualsOf(...trials)).toEqual(trials.flatMap((seen) => residualsOf(seen)));
  });

  it("changes each residual by what one standard deviation of run, slab and setting would", () => {
    const seen = { ...trial, coreC: 70, lossPercent: 10, brownScores: [4], timeMin: 9 };
    const problem = problemOf(seen);
    const effects = problem.effectsAt(z, USUAL_NOISE);
    const own = residualsOf(seen);
    const changed = (other: CrispObservation): number[] => residualsOf(other).map((value, at) => value - own[at]);
    expect([...effects.thickness]).toEqual(changed({ ...seen, thicknessMm: 9.3 }));
    // a hotter run: warmer core, more loss, more browning than was read, so that residuals fall
    for (const value of effects.run) expect(value).toBeLessThan(0);
    // a core behind its clock is colder than the clock says; a crust behind has lost less and browned less
    expect(effects.core[0]).toBeGreaterThan(0);
    expect([...effects.core.slice(1)]).toEqual([0, 0]);
    expect(effects.crust[0]).toBe(0);
    expect(effects.crust[1]).toBeGreaterThan(0);
    expect(effects.crust[2]).toBeGreaterThan(0);
    expect([effects.brown[0], effects.brown[1]]).toEqual([0, 0]);
    expect(effects.brown[2]).toBeLessThan(0);
    const wide = problem.effectsAt(z, { ...USUAL_NOISE, misfit: 2, run: 0.12 });
    expect(wide.brown[2] / effects.brown[2]).toBeGreaterThan(1.7);
    expect(wide.run[1] / effects.run[1]).toBeGreaterThan(1.7);
  });
});
