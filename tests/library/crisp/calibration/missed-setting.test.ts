import { describe, expect, it } from "vitest";
import { calibrateCrisp } from "../../../../kernel-lib/library/src/crisp/calibration/calibrate-crisp";
import { missedSetting } from "../../../../kernel-lib/library/src/crisp/calibration/missed-setting";
import { food, unmeasured } from "../sample-food";

/** So many cores read while they climb, at one setting. */
function calibrated(count: number) {
  const observations = Array.from({ length: count }, (_, at) => ({
    ...unmeasured,
    id: `T-${at}`,
    session: `s${at}`,
    timeMin: 8 + 0.5 * (at % 4),
    restedCoreC: 62 + 5 * (at % 4),
  }));
  return calibrateCrisp({ food, observations, applianceIds: ["basket"] });
}

describe("missedSetting", () => {
  const often = calibrated(12);

  it("is nothing where nothing was logged", () => {
    expect(missedSetting(often, { ...unmeasured, thicknessMm: 14 })).toBeNull();
    expect(missedSetting(calibrated(0), unmeasured)).toBeNull();
  });

  it("knows the core's miss the better the more cores were read there, and nothing of what was not scored", () => {
    const left = [1, 4, 12].map((count) => missedSetting(calibrated(count), unmeasured)?.left ?? []);
    const [[, crust, brown]] = left;
    expect([crust[1], brown[2]]).toEqual([1, 1]);
    expect(left[0][0][0]).toBeLessThan(1);
    expect(left[1][0][0]).toBeLessThan(left[0][0][0]);
    expect(left[2][0][0]).toBeLessThan(left[1][0][0]);
    expect(left[2][0][0]).toBeGreaterThan(0);
  });

  it("expects the miss to make up for constants: slower ones by a core that is ahead of its clock", () => {
    const factor = often.constants.findIndex(({ name }) => name === "coreFactor");
    const [core] = missedSetting(often, unmeasured)?.byConstant ?? [];
    expect(core[factor]).toBeLessThan(0);
  });
});
