import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { learningFrom } from "../../../../kernel-lib/library/src/plan/value/learning-from";
import { targetDraws } from "../../../../kernel-lib/library/src/plan/value/target-draws";
import { judgeByMean, valueOfInformation } from "../../../../kernel-lib/library/src/plan/value/value-of-information";
import {
  normalCdf,
  normalDensity,
  normalQuantile,
} from "../../../../kernel-lib/library/src/statistics/distributions/normal-distribution";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

/** Standard normal draws at the middles of parts of equal chance, of variance 1 exactly. */
function evenNormals(count: number): number[] {
  const raw = Array.from({ length: count }, (_, at) => normalQuantile((at + 0.5) / count));
  const size = Math.sqrt(raw.reduce((sum, value) => sum + value * value, 0) / (count - 1));
  return raw.map((value) => value / size);
}

/** Knowledge gradient of two alternatives that differ by Δ, of which s̃ is told: s̃·φ(Δ/s̃) − |Δ|·Φ(−|Δ|/s̃). */
function knowledgeGradient(difference: number, told: number): number {
  const ratio = Math.abs(difference) / told;
  return told * normalDensity(ratio) - Math.abs(difference) * normalCdf(-ratio);
}

const even = evenNormals(1000);

describe("valueOfInformation", () => {
  it("is the knowledge gradient of two alternatives under a normal belief", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (difference, errorSd) => {
          const targets = targetDraws(even.map((z) => [z]));
          const learning = learningFrom({
            targets,
            readings: [even],
            noise: Float64Array.of(errorSd * errorSd),
            matched: true,
          });
          const told = Math.sqrt(1 / (1 + errorSd * errorSd));
          expect(Math.sqrt(learning.told[0])).toBeCloseTo(told, 6);
          const judge = judgeByMean(([gain]) => [0, difference + gain]);
          const { gain } = valueOfInformation({ targets, learning, judge, cases: 250 });
          expect(gain).toBeCloseTo(knowledgeGradient(difference, told), 2.5);
        },
      ),
      { numRuns: 15 },
    );
  });

  it("is that of perfect knowledge for a reading without error, whatever the shape of the draws", () => {
    const random = seededRandom(3);
    const draws = Array.from({ length: 400 }, () => [Math.exp(random.normal()), random.uniform() ** 2]);
    const targets = targetDraws(draws);
    const utilityOf = (target: ArrayLike<number>): number[] => [target[0], 2 * target[1] + 0.5, 1 / (0.2 + target[0])];
    const learning = learningFrom({
      targets,
      readings: [draws.map(([a]) => a), draws.map(([, b]) => b)],
      noise: Float64Array.of(1e-12, 0, 0, 1e-12),
      matched: true,
    });
    const { gain, now, utilityNow } = valueOfInformation({ targets, learning, judge: judgeByMean(utilityOf) });
    const means = [0, 1, 2].map((at) => draws.reduce((sum, draw) => sum + utilityOf(draw)[at], 0) / draws.length);
    const best = draws.reduce((sum, draw) => sum + Math.max(...utilityOf(draw)), 0) / draws.length;
    expect(now).toBe(means.indexOf(Math.max(...means)));
    expect(utilityNow).toBeCloseTo(Math.max(...means), 4);
    expect(gain).toBeCloseTo(best - Math.max(...means), 4);
  });

  it("is nothing for readings that tell nothing, though random draws of them seem to", () => {
    const random = seededRandom(11);
    const gains: number[] = [];
    for (let round = 0; round < 20; round++) {
      const draws = Array.from({ length: 300 }, () => [random.normal(), random.normal()]);
      const readings = Array.from({ length: 5 }, () => draws.map(() => 3 * random.normal()));
      const targets = targetDraws(draws);
      const learning = learningFrom({ targets, readings });
      const judge = judgeByMean(([a, b]) => [0, a, b]);
      const { gain, chanceOfChange } = valueOfInformation({ targets, learning, judge, cases: 100 });
      const perfect = learningFrom({ targets, readings: [draws.map(([a]) => 1e4 * a), draws.map(([, b]) => 1e4 * b)] });
      const most = valueOfInformation({ targets, learning: perfect, judge, cases: 100 }).gain;
      expect(most).toBeGreaterThan(0.5);
      gains.push(gain / most);
      if (learning.share === 0) expect([gain, chanceOfChange]).toEqual([0, 0]);
    }
    expect(gains.toSorted((a, b) => a - b).at(-1)).toBeLessThan(0.04);
    expect(gains.reduce((sum, gain) => sum + gain, 0) / gains.length).toBeLessThan(0.01);
  });

  it("rises with the number of tasters: errors of variance s²/n", () => {
    const random = seededRandom(5);
    const draws = Array.from({ length: 500 }, () => [random.normal(), random.normal()]);
    const targets = targetDraws(draws);
    const judge = judgeByMean(([a, b]) => [0.3, a, a + b]);
    const gains = [1, 2, 4, 8, 16].map((tasters) => {
      const learning = learningFrom({
        targets,
        readings: [draws.map(([a]) => a)],
        noise: Float64Array.of(4 / tasters),
      });
      return valueOfInformation({ targets, learning, judge }).gain;
    });
    for (let at = 1; at < gains.length; at++) expect(gains[at]).toBeGreaterThan(gains[at - 1]);
  });

  it("chooses among what is allowed alone, and says when nothing is", () => {
    const targets = targetDraws(even.map((z) => [z]));
    const learning = learningFrom({ targets, readings: [even], matched: true });
    const utility = (mean: number): number[] => [mean, 5];
    const judgeWith =
      (allowed: readonly number[]) =>
      () =>
      (mean: Float64Array): { utility: number[]; allowed: readonly number[] } => ({
        utility: utility(mean[0]),
        allowed,
      });
    const one = valueOfInformation({ targets, learning, judge: judgeWith([1, 0]) });
    expect([one.now, one.gain, one.chanceOfChange]).toEqual([0, 0, 0]);
    const none = valueOfInformation({ targets, learning, judge: judgeWith([0, 0]) });
    expect([none.now, none.gain]).toEqual([-1, 0]);
  });

  it("takes the first that is nearly as good", () => {
    const targets = targetDraws(even.map((z) => [z]));
    const learning = learningFrom({ targets, readings: [even], matched: true });
    const judge = judgeByMean(([a]) => [0.999 + 0 * a, 1, 0.9]);
    expect(valueOfInformation({ targets, learning, judge, cases: 20 }).now).toBe(1);
    expect(valueOfInformation({ targets, learning, judge, cases: 20, nearly: 0.005 }).now).toBe(0);
  });

  it("counts no chance in the draws as gain: what is chosen by some is valued by others", () => {
    const random = seededRandom(21);
    const noisy = (): Float64Array => Float64Array.from({ length: 50 }, () => 0.1 * random.normal());
    const targets = targetDraws(even.map((z) => [z]));
    const learning = learningFrom({ targets, readings: [even], matched: true });
    const gainOf = (apart: boolean): number =>
      valueOfInformation({
        targets,
        learning,
        judge: () => () => ({ utility: noisy(), ...(apart ? { valued: noisy() } : {}) }),
      }).gain;
    expect(gainOf(false)).toBeGreaterThan(0.2);
    expect(Math.abs(gainOf(true))).toBeLessThan(0.02);
  });
});
