import { describe, expect, it } from "vitest";
import {
  browningFor,
  brownScoreAt,
  CRISP_SCORE,
  crispScoreAt,
  meanWritten,
} from "../../../../kernel-lib/library/src/crisp/clocks/panel-score";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

describe("panel scores", () => {
  it("give 6 at the depth that checks call crisp, and change from 10 to 90 % over 4.394 widths", () => {
    expect(crispScoreAt(0.5, 0.5, 0.1)).toBeCloseTo(CRISP_SCORE, 12);
    const centre = 0.5 - 0.1 * Math.log(2);
    expect(crispScoreAt(centre + 0.1 * Math.log(9), 0.5, 0.1)).toBeCloseTo(8.1, 10);
    expect(crispScoreAt(centre - 0.1 * Math.log(9), 0.5, 0.1)).toBeCloseTo(0.9, 10);
  });

  it("turn browning into a score and back", () => {
    for (const steepness of [0.7, 1, 1.4])
      for (const score of [0.5, 3, 7, 8.9])
        expect(brownScoreAt(browningFor(score, steepness), steepness)).toBeCloseTo(score, 10);
    expect(brownScoreAt(0.6, 1.4)).toBeCloseTo(brownScoreAt(0.6, 1), 12);
    expect(brownScoreAt(1, 1)).toBeCloseTo(9 * (1 - Math.exp(-1)), 12);
  });

  it("know that a scale with ends pulls the mean of tasters inwards", () => {
    const random = seededRandom(3);
    for (const score of [0.2, 4.5, 8.7]) {
      let sum = 0;
      for (let taster = 0; taster < 200_000; taster++) sum += Math.max(0, Math.min(9, score + 0.8 * random.normal()));
      expect(Math.abs(meanWritten(score, 0.8) - sum / 200_000)).toBeLessThan(0.01);
    }
  });
});
