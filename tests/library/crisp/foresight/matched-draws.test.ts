import { describe, expect, it } from "vitest";
import { calibrateCrisp } from "../../../../kernel-lib/library/src/crisp/calibration/calibrate-crisp";
import { matchedDraws } from "../../../../kernel-lib/library/src/crisp/foresight/matched-draws";
import { food } from "../sample-food";

const calibration = calibrateCrisp({ food: food, observations: [], applianceIds: ["basket"] });
const draws = matchedDraws(calibration, { count: 80, seed: 3 });

describe("matchedDraws", () => {
  it("has the calibration's means and covariances, exactly", () => {
    const size = calibration.mode.length;
    for (let i = 0; i < size; i++) {
      const mean = draws.steps.reduce((sum, step) => sum + step[i], 0) / draws.count;
      expect(mean).toBeCloseTo(0, 10);
      for (let j = 0; j <= i; j++) {
        const shared = draws.steps.reduce((sum, step) => sum + step[i] * step[j], 0) / (draws.count - 1);
        expect(shared).toBeCloseTo(calibration.covariance[i][j], 9);
      }
    }
  });

  it("lets no drift go with a constant, nor with another drift", () => {
    const drifts = [draws.drift.core, draws.drift.crust, draws.drift.brown];
    for (const [at, drift] of drifts.entries()) {
      for (let constant = 0; constant < calibration.mode.length; constant++)
        expect(draws.steps.reduce((sum, step, draw) => sum + step[constant] * drift[draw], 0)).toBeCloseTo(0, 8);
      for (const [other, one] of drifts.entries())
        expect(one.reduce((sum, value, draw) => sum + value * drift[draw], 0) / (draws.count - 1)).toBeCloseTo(
          at === other ? 1 : 0,
          9,
        );
    }
  });
});
