import { fitOrderedScores, fitYesNo, predictOrderedScores, valueAtShare } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

const timeMin = [8, 9, 10, 11, 12, 13, 14, 15, 16];
const scores = fitOrderedScores({ covariates: { timeMin }, score: [1, 1, 2, 1, 2, 3, 2, 3, 3] });

describe("valueAtShare for ordered scores", () => {
  it("is where predictOrderedScores gives that share, at each score and share", () => {
    for (const score of [2, 3]) {
      for (const share of [0.2, 0.5, 0.9]) {
        const { value } = valueAtShare(scores, { covariate: "timeMin", score, share });
        const row = predictOrderedScores(scores, { timeMin: value }).rows.find((one) => one.score === score)!;
        expect(row.atLeast).toBeCloseTo(share, 10);
      }
    }
  });
  it("has a Fieller interval at whose ends the 95 % interval of the share just touches it", () => {
    for (const score of [2, 3]) {
      const { value, fieller95, delta95, standardError } = valueAtShare(scores, {
        covariate: "timeMin",
        score,
        share: 0.5,
      });
      const [low, high] = fieller95!;
      const touch = (at: number): readonly number[] =>
        predictOrderedScores(scores, { timeMin: at }).rows.find((one) => one.score === score)!.atLeast95;
      // below the value the share is too small: its upper end reaches 0.5 there, and its lower end above
      expect(touch(low)[1]).toBeCloseTo(0.5, 8);
      expect(touch(high)[0]).toBeCloseTo(0.5, 8);
      expect(delta95[0]).toBeCloseTo(value - 1.959964 * standardError, 5);
      expect(delta95[1]).toBeCloseTo(value + 1.959964 * standardError, 5);
    }
  });
  it("gives for scores what fitYesNo gives for the same cut, within the doubt of both", () => {
    const random = seededRandom(5);
    const x = Array.from({ length: 400 }, () => 8 + 8 * random.uniform());
    const latent = x.map((value) => value - 12 + 1.5 * Math.log(1 / random.uniform() - 1));
    const score = latent.map((value) => (value < -2 ? 1 : value < 1 ? 2 : 3));
    const byScores = valueAtShare(fitOrderedScores({ covariates: { x }, score }), { covariate: "x", score: 3 });
    const byCut = valueAtShare(fitYesNo({ covariates: { x }, yes: score.map((one) => one === 3) }), { covariate: "x" });
    expect(Math.abs(byScores.value - 13)).toBeLessThan(2.5 * byScores.standardError);
    expect(Math.abs(byScores.value - byCut.value)).toBeLessThan(byCut.standardError);
    // more scores tell the slope better, but the doubt at one cut hangs on the same trials
    expect(Math.abs(byScores.standardError / byCut.standardError - 1)).toBeLessThan(0.1);
    expect(byScores.reading).toContain("50 % score 3 or more at x");
    expect(byCut.reading).toContain("50 % are yes at x");
  });
  it("solves beside other covariates, words too, and flags a value outside the trials", () => {
    const appliance = ["oven", "basket", "oven", "oven", "basket", "basket", "oven", "oven", "basket"];
    const fit = fitOrderedScores({
      covariates: { timeMin: [...timeMin, ...timeMin], appliance: [...appliance, ...appliance.toReversed()] },
      score: [1, 1, 2, 1, 2, 3, 2, 3, 3, 1, 2, 1, 2, 2, 1, 3, 2, 3],
    });
    const at = (word: string, share: number) =>
      valueAtShare(fit, { covariate: "timeMin", score: 3, share, at: { appliance: word } });
    const { value } = at("basket", 0.5);
    expect(
      predictOrderedScores(fit, { timeMin: value, appliance: "basket" }).rows.find((one) => one.score === 3)!.atLeast,
    ).toBeCloseTo(0.5, 10);
    expect(at("oven", 0.5).value).not.toBeCloseTo(value, 3);
    expect(at("oven", 0.999).extrapolated).toBe(true);
    expect(at("oven", 0.5).extrapolated).toBe(false);
  });
  it("asks for a score above the lowest, and takes none for yes and no", () => {
    expect(() => valueAtShare(scores, { covariate: "timeMin" })).toThrow(
      "valueAtShare: score must be one of 2, 3 (that score or more), got undefined",
    );
    expect(() => valueAtShare(scores, { covariate: "timeMin", score: 1 })).toThrow("must be one of 2, 3");
    const yes = fitYesNo({ covariates: { timeMin }, yes: [0, 0, 0, 1, 0, 1, 1, 0, 1] });
    expect(() => valueAtShare(yes, { covariate: "timeMin", score: 2 })).toThrow(
      "valueAtShare: score must be left out for a fit of yes and no, got 2",
    );
  });
});
