import { describe, expect, it } from "vitest";
import { learningFrom, learningOfOne } from "../../../../kernel-lib/library/src/plan/value/learning-from";
import { targetDraws } from "../../../../kernel-lib/library/src/plan/value/target-draws";
import { varianceLeft } from "../../../../kernel-lib/library/src/statistics/linear-algebra/variance-left";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

const random = seededRandom(8);
const draws = Array.from({ length: 400 }, () => {
  const [a, b, c] = [random.normal(), random.normal(), random.normal()];
  return { targets: [a + 0.5 * b, b - c], readings: [2 * a, b + c, 0.3 * c] };
});
const targets = targetDraws(draws.map((draw) => draw.targets));
const readings = [0, 1, 2].map((at) => draws.map((draw) => draw.readings[at]));

describe("learningFrom", () => {
  it("tells of one target what varianceLeft leaves of it", () => {
    const learning = learningFrom({ targets, readings, matched: true });
    for (const at of [0, 1]) {
      const own = draws.map((draw) => draw.targets[at]);
      const left = varianceLeft(
        own,
        draws.map((draw) => draw.readings),
      );
      const variance = targets.root[2 * at] ** 2 + targets.root[2 * at + 1] ** 2;
      expect(learning.told[3 * at] / variance).toBeCloseTo(1 - left, 9);
    }
  });

  it("parts the covariance of the draws into what is told and what is left", () => {
    const { told, tells, leaves } = learningFrom({ targets, readings });
    const covarianceOf = (matrix: Float64Array): number[] => {
      const rows = draws.map((_, row) =>
        [0, 1].map((i) => matrix[2 * i] * targets.centred[2 * row] + matrix[2 * i + 1] * targets.centred[2 * row + 1]),
      );
      return [0, 1].flatMap((i) =>
        [0, 1].map((j) => rows.reduce((sum, row) => sum + row[i] * row[j], 0) / (rows.length - 1)),
      );
    };
    const own = covarianceOf(Float64Array.of(1, 0, 0, 1));
    const open = covarianceOf(leaves);
    for (const [at, value] of covarianceOf(tells).entries()) {
      expect(value).toBeCloseTo(told[at], 9);
      expect(value + open[at]).toBeCloseTo(own[at], 9);
    }
  });

  it("takes errors that readings share into account: a shared one is learnt no better by two", () => {
    const a = draws.map((draw) => draw.targets[0]);
    const one = targetDraws(a.map((value) => [value]));
    const share = (noise: Float64Array, columns: number): number =>
      learningFrom({ targets: one, readings: Array.from({ length: columns }, () => a), noise, matched: true }).share;
    const single = share(Float64Array.of(1), 1);
    expect(share(Float64Array.of(1, 0.9999, 0.9999, 1), 2)).toBeCloseTo(single, 3);
    expect(share(Float64Array.of(1, 0, 0, 1), 2)).toBeGreaterThan(single + 0.05);
  });

  it("keeps of a learning what one target brings: all of that one's", () => {
    const learning = learningFrom({ targets, readings });
    const part = learningOfOne(targets, learning, 1);
    expect(part.told[3]).toBeCloseTo(learning.told[3], 9);
    expect(part.told[0]).toBeLessThan(learning.told[0]);
  });

  it("must have a draw for every target's draw", () => {
    expect(() => learningFrom({ targets, readings: [[1, 2]] })).toThrow("reading 0 must have 400 draws, got 2");
  });
});
