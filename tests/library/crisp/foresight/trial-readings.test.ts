import { describe, expect, it } from "vitest";
import {
  type CrispCalibration,
  calibrateCrisp,
} from "../../../../kernel-lib/library/src/crisp/calibration/calibrate-crisp";
import { probedMm } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-noise";
import type { CrispObservation } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-observation";
import { coreReadingC } from "../../../../kernel-lib/library/src/crisp/clocks/core-clock";
import { matchedDraws } from "../../../../kernel-lib/library/src/crisp/foresight/matched-draws";
import {
  momentDraws,
  type PlaceDraws,
  placeDraws,
} from "../../../../kernel-lib/library/src/crisp/foresight/place-draws";
import {
  readingNoise,
  type TrialReadings,
  trialReadings,
} from "../../../../kernel-lib/library/src/crisp/foresight/trial-readings";
import { settle } from "../../../../kernel-lib/library/src/crisp/window/window-setting";
import { learningFrom } from "../../../../kernel-lib/library/src/plan/value/learning-from";
import { targetDraws } from "../../../../kernel-lib/library/src/plan/value/target-draws";
import { food, unmeasured } from "../sample-food";

/** Trials at one setting, each with a core read while it climbs and a loss, as the clocks have them. */
function logged(count: number): readonly CrispObservation[] {
  return Array.from({ length: count }, (_, at) => ({
    ...unmeasured,
    id: `T-${at}`,
    session: `s${at}`,
    thicknessMm: 9,
    timeMin: 8 + 0.5 * (at % 4),
    restedCoreC: 62 + 5 * (at % 4),
    lossPercent: 7 + (at % 4),
  }));
}

function calibrated(observations: readonly CrispObservation[]): CrispCalibration {
  return calibrateCrisp({ food, observations, applianceIds: [unmeasured.applianceId] });
}

function placeOf(calibration: CrispCalibration, thicknessMm: number, count = 300): PlaceDraws {
  const { applianceId, setpointC } = unmeasured;
  return placeDraws(
    matchedDraws(calibration, { count, seed: 4 }),
    settle({ thicknessMm, applianceId, setpointC }, "test"),
  );
}

function readingsAt(place: PlaceDraws, changed: Partial<Parameters<typeof trialReadings>[0]> = {}): TrialReadings {
  const plain = { slab: "a", timeMin: 9, looksMin: [], probe: true, tasters: 2, climbingC: 84 };
  return trialReadings({ place, ...plain, ...changed });
}

/** Share of the variance of ln core at 9 mm that a trial tells. */
function toldOfCore(calibration: CrispCalibration, trials: readonly TrialReadings[]): number {
  const place = placeOf(calibration, 9);
  const { logs } = momentDraws(place);
  const targets = targetDraws(Array.from({ length: 300 }, (_, at) => [logs[4 * at]]));
  const { noise } = calibration;
  return learningFrom({
    targets,
    readings: trials.flatMap(({ columns }) => columns),
    noise: readingNoise(trials, noise.session / noise.run),
    matched: true,
  }).share;
}

describe("trialReadings", () => {
  const young = calibrated(logged(4));

  it("reads cores as the core's clock has them at the most probable constants", () => {
    const place = placeOf(calibrated([]), 9);
    const { columns } = readingsAt(place, { timeMin: 9 });
    const middle = coreReadingC(place.basis, place.middle, 9, 9, false);
    const sorted = columns[0].toSorted();
    expect(sorted[30]).toBeLessThan(middle);
    expect(sorted[270]).toBeGreaterThan(middle);
    expect(Math.abs(sorted[150] - middle)).toBeLessThan(4);
  });

  it("learns from one more trial about what calibrating with it leaves: at a setting of its own, and at one that was logged", () => {
    const before = spreadOfCore(young);
    for (const thicknessMm of [9, 14]) {
      const timeMin = thicknessMm === 9 ? 9 : 15;
      const place = placeOf(young, thicknessMm);
      const told = toldOfCore(young, [readingsAt(place, { timeMin, tasters: 0 })]);
      const piece = place.middle;
      const added: CrispObservation = {
        ...unmeasured,
        id: "new",
        session: "new",
        thicknessMm,
        thicknessSeMm: (0.03 * thicknessMm) / Math.sqrt(5),
        timeMin,
        coreC: coreReadingC(place.basis, piece, probedMm(thicknessMm, 0.03), timeMin, false),
        lossPercent: readingsAt(place, { timeMin, tasters: 0 }).columns[1].reduce((sum, loss) => sum + loss / 300, 0),
      };
      const after = spreadOfCore(calibrated([...logged(4), added]));
      expect(told).toBeGreaterThan(0.08);
      expect(Math.abs(1 - told - (after / before) ** 2)).toBeLessThan(0.06);
    }
  });

  it("counts what the trials of a morning share: two of one run each tell more than one, less than two of other mornings", () => {
    const place = placeOf(young, 13);
    const [one, two] = [readingsAt(place, { timeMin: 14 }), readingsAt(place, { timeMin: 14.5 })];
    const noise = readingNoise([one, two], 0.5);
    const size = one.own.length;
    expect(noise).toHaveLength((2 * size) ** 2);
    for (let a = 0; a < size; a++)
      for (let b = 0; b < size; b++) {
        const runs = one.run[a] * two.run[b] * 0.25;
        const slab = one.thickness[a] * two.thickness[b];
        const misses = [0, 1, 2].reduce((sum, clock) => sum + one.missed[clock][a] * two.missed[clock][b], 0);
        expect(noise[a * 2 * size + size + b]).toBeCloseTo(runs + slab + misses, 9);
      }
    const single = toldOfCore(young, [one]);
    const both = toldOfCore(young, [one, two]);
    const apart = toldOfCore(young, [one, { ...two, slab: "b", group: "elsewhere" }]);
    expect(both).toBeGreaterThan(single);
    expect(apart).toBeGreaterThan(both);
  });

  it("says between which looks pieces should turn crisp, and gives no score to what is not at its limit", () => {
    const place = placeOf(calibrated([]), 9);
    const looksMin = [11, 12, 13];
    const seen = readingsAt(place, { timeMin: 13, looksMin, probe: true });
    const [low, high] = [Math.log(11) - 0.1, Math.log(13) + 0.1];
    for (const value of seen.columns[0]) {
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
    }
    expect(seen.columns).toHaveLength(5);
    expect(readingsAt(place, { timeMin: 2, looksMin, probe: true }).columns).toHaveLength(3);
    expect(readingsAt(place, { timeMin: 13, looksMin, probe: false }).columns).toHaveLength(2);
    const more = readingsAt(place, { timeMin: 13, looksMin, tasters: 8 });
    expect(more.own[3]).toBeCloseTo(seen.own[3] / 4, 12);
    expect(seen.chance.done).toBeGreaterThan(seen.chance.climbing);
  });

  it("tells less at a setting that was logged often than if its misses were new", () => {
    const often = calibrated(logged(12));
    const forgot = { ...often, observations: [] };
    const again = toldOfCore(often, [readingsAt(placeOf(often, 9))]);
    const anew = toldOfCore(forgot, [readingsAt(placeOf(forgot, 9))]);
    expect(again).toBeGreaterThan(0);
    expect(again).toBeLessThan(0.5 * anew);
  });
});

function spreadOfCore(calibration: CrispCalibration): number {
  const { logs } = momentDraws(placeOf(calibration, 9));
  const cores = Array.from({ length: 300 }, (_, at) => logs[4 * at]);
  const mean = cores.reduce((sum, core) => sum + core / 300, 0);
  return Math.sqrt(cores.reduce((sum, core) => sum + (core - mean) ** 2, 0) / 299);
}
