import { describe, expect, it } from "vitest";
import { crispTimes } from "../../../kernel-lib/library/src/trials/crisp-times";
import type { KitchenTrial } from "../../../kernel-lib/library/src/trials/kitchen";

const trial = (trialId: string, more: Partial<KitchenTrial>): KitchenTrial => ({
  trialId,
  date: "2026-02-03",
  variantId: "beet",
  panId: "half",
  applianceId: "basket",
  batchG: 1150,
  probesMm: [8],
  thicknessMm: 8,
  thicknessSdMm: null,
  setpointC: 200,
  loadFraction: 0.6,
  startC: -18,
  flipMin: null,
  timeMin: 12,
  notCrispMin: 9,
  crispMin: 11,
  coreC: null,
  restedCoreC: null,
  restMin: null,
  slab: null,
  session: null,
  cook: null,
  pieceLengthMm: null,
  pieceWidthMm: null,
  looksMin: [],
  coresC: [],
  crispTasters: [],
  brownTasters: [],
  preheated: null,
  place: null,
  programme: [],
  oilG: null,
  barePieceG: null,
  coatedPieceG: null,
  ageDays: null,
  frost: null,
  photos: [],
  extra: {},
  card: null,
  massBeforeG: null,
  massAfterG: null,
  pieces: null,
  crispScores: [],
  brownScores: [],
  note: null,
  ...more,
});

describe("crispTimes", () => {
  it("keeps the interval, its middle, and the order of thickness", () => {
    const { times } = crispTimes([trial("T-2", { thicknessMm: 9 }), trial("T-1", {})]);
    expect(times).toEqual([
      { trialId: "T-1", thicknessMm: 8, lowerMin: 9, upperMin: 11, timeMin: 10 },
      { trialId: "T-2", thicknessMm: 9, lowerMin: 9, upperMin: 11, timeMin: 10 },
    ]);
  });

  it("takes only what was asked for", () => {
    const trials = [
      trial("hit", {}),
      trial("other variant", { variantId: "corn" }),
      trial("other oven", { applianceId: "oven" }),
      trial("hotter", { setpointC: 205 }),
      trial("crowded", { loadFraction: 0.9 }),
    ];
    const asked = { variantId: "beet", applianceId: "basket", setpointC: 200.5, largestLoadFraction: 0.7 };
    expect(crispTimes(trials, asked).times.map((time) => time.trialId)).toEqual(["hit"]);
  });

  it("meets a setpoint within 1 K or as far as it is told, takes floors as full as it is told, and those that logged none", () => {
    const ids = (trials: KitchenTrial[], asked: Parameters<typeof crispTimes>[1]) =>
      crispTimes(trials, asked).times.map(({ trialId }) => trialId);
    const airs = [199, 200, 201, 201.1, 206].map((setpointC) => trial(`at ${setpointC}`, { setpointC }));
    expect(ids(airs, { setpointC: 200 })).toEqual(["at 199", "at 200", "at 201"]);
    expect(ids(airs, { setpointC: 203, toleranceK: 3 })).toEqual(["at 200", "at 201", "at 201.1", "at 206"]);
    expect(ids(airs, { setpointC: 200, toleranceK: 0 })).toEqual(["at 200"]);
    const loads = [null, 0.7, 0.71].map((loadFraction) => trial(`load ${loadFraction}`, { loadFraction }));
    expect(ids(loads, { largestLoadFraction: 0.7 })).toEqual(["load null", "load 0.7"]);
    expect(ids(loads, {})).toHaveLength(3);
  });

  it("says nothing of trials that were seen from both sides, and keeps their own order within a thickness", () => {
    const { times, notices } = crispTimes([trial("b", {}), trial("a", {}), trial("thin", { thicknessMm: 7 })]);
    expect(notices).toEqual([]);
    expect(times.map(({ trialId }) => trialId)).toEqual(["thin", "b", "a"]);
    expect(crispTimes([trial("at once", { notCrispMin: 0, crispMin: 4 })]).times[0]).toMatchObject({
      lowerMin: 0,
      timeMin: 2,
    });
  });

  it("drops nothing silently: one-sided times stay, silent trials are named", () => {
    const trials = [
      trial("early", { notCrispMin: null }),
      trial("never", { crispMin: null }),
      trial("unwatched", { notCrispMin: null, crispMin: null }),
    ];
    const { times, notices } = crispTimes(trials);
    expect(times.map(({ lowerMin, upperMin, timeMin }) => [lowerMin, upperMin, timeMin])).toEqual([
      [0, 11, null],
      [9, null, null],
    ]);
    expect(notices).toEqual([
      "Trial unwatched has no crispness check.",
      "Seen from one side only, so not in a least-squares fit: early, never (fit censored times to use them).",
    ]);
  });

  it("says what was asked when nothing matches", () => {
    expect(() => crispTimes([trial("a", {})], { variantId: "corn" })).toThrow(
      'crispTimes: trials must hold one that matches, got {"variantId":"corn"}',
    );
  });
});
