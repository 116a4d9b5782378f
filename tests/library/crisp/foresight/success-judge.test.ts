import { describe, expect, it } from "vitest";
import { calibrateCrisp } from "../../../../kernel-lib/library/src/crisp/calibration/calibrate-crisp";
import { matchedDraws } from "../../../../kernel-lib/library/src/crisp/foresight/matched-draws";
import { momentDraws, placeDraws } from "../../../../kernel-lib/library/src/crisp/foresight/place-draws";
import { successJudge } from "../../../../kernel-lib/library/src/crisp/foresight/success-judge";
import { windowAt } from "../../../../kernel-lib/library/src/crisp/window/window-at";
import { targetDraws } from "../../../../kernel-lib/library/src/plan/value/target-draws";
import { food, unmeasured } from "../sample-food";

const observations = [0, 1, 2, 3, 4, 5].map((at) => ({
  ...unmeasured,
  id: `T-${at}`,
  session: `s${at}`,
  thicknessMm: at < 3 ? 9 : 12,
  timeMin: at < 3 ? 9 + 3 * at : 12 + 3 * (at - 3),
  notCrispMin: at % 3 === 0 ? null : at < 3 ? 11 : 14,
  crispMin: at % 3 === 0 ? null : at < 3 ? 12 : 15,
  restedCoreC: 72 + 10 * (at % 3),
  lossPercent: 8 + 2 * (at % 3),
  crispScores: [3 + 2.5 * (at % 3), 3.5 + 2.5 * (at % 3)],
  brownScores: [2 + 1.5 * (at % 3), 2 + 1.5 * (at % 3)],
}));
const calibration = calibrateCrisp({ food, observations, applianceIds: ["basket"] });
const window = windowAt({ calibration, thicknessMm: 9, applianceId: "basket", setpointC: 200, draws: 4000 });
const count = 600;
const moments = momentDraws(placeDraws(matchedDraws(calibration, { count, seed: 2 }), window.setting));
const targets = targetDraws(
  Array.from({ length: count }, (_, at) => Array.from(moments.logs.subarray(4 * at, 4 * at + 4))),
);
const { judge, alternatives } = successJudge({
  places: [{ moments, longestMin: window.setting.longestMin }],
  pieces: 6,
  seed: 1,
  late: true,
});
const judged = judge(targets.centred)(targets.mean);

describe("successJudge", () => {
  it("has the window's own chance of success at every time", () => {
    for (const [at, one] of alternatives.entries()) {
      const { timesMin, success } = window.chances;
      const near = timesMin.findIndex((time) => time >= (one?.timeMin ?? 0));
      if (near < 1) continue;
      const [low, high] = [success[near - 1], success[near]].toSorted((a, b) => a - b);
      expect(judged.utility[at]).toBeGreaterThan(low - 0.03);
      expect(judged.utility[at]).toBeLessThan(high + 0.03);
    }
  });

  it("allows the times that the window holds for safe, and no other", () => {
    const first = alternatives.findIndex((_, at) => judged.allowed?.[at] === 1);
    const from = alternatives[first]?.timeMin ?? 0;
    expect(Math.abs(Math.log(from / window.chances.safeFromMin))).toBeLessThan(0.06);
    for (let at = 0; at < first; at++) expect(judged.allowed?.[at]).toBe(0);
  });

  it("lets a time be chosen earlier once the core is known better, and later once it is known to be late", () => {
    const firstOf = (left: Float64Array, mean: Float64Array): number => {
      const { allowed } = judge(left)(mean);
      return alternatives.findIndex((_, at) => allowed?.[at] === 1);
    };
    const now = firstOf(targets.centred, targets.mean);
    expect(
      firstOf(
        targets.centred.map((value) => 0.3 * value),
        targets.mean,
      ),
    ).toBeLessThan(now);
    const late = targets.mean.map((value, at) => (at === 0 ? value + 0.1 : value));
    expect(firstOf(targets.centred, late)).toBeGreaterThan(now);
  });
});
