import { fitCensoredTimes, fitOrderedScores, fitYesNo } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

/**
 * Small trials with two appliances and a number, outcomes by chance: the same trials as yes/no, as three scores and as
 * times seen on one side. Every fit must either refuse, naming a covariate, or stand at a top: a second fit to the trials
 * twice over then gives the same estimates with standard errors smaller by the root of 2.
 */
describe("refuseSeparation in all three fits", () => {
  const random = seededRandom(17);
  const trials = Array.from({ length: 400 }, () => {
    const n = 6 + random.integer(6);
    const x = Array.from({ length: n }, (_, i) => (i < 2 ? i : random.integer(5)));
    return {
      x,
      appliance: x.map((_, i) => (i % 2 === 0 ? "oven" : "basket")),
      // three scores, each at least once
      score: x.map((value, i) => (i < 3 ? i : Math.min(2, Math.max(0, Math.round(value / 2 + random.normal(0, 0.7)))))),
      look: x.map(() => 8 + random.integer(4)),
    };
  });
  const twice = <T>(values: readonly T[]): T[] => [...values, ...values];
  const never = Number.POSITIVE_INFINITY;
  type Given = (typeof trials)[number];
  const fits = {
    fitYesNo: (t: Given, times: <T>(values: readonly T[]) => T[]) =>
      fitYesNo({
        covariates: { x: times(t.x), appliance: times(t.appliance) },
        yes: times(t.score.map((score) => Number(score > 0))),
      }),
    fitOrderedScores: (t: Given, times: <T>(values: readonly T[]) => T[]) =>
      fitOrderedScores({ covariates: { x: times(t.x), appliance: times(t.appliance) }, score: times(t.score) }),
    fitCensoredTimes: (t: Given, times: <T>(values: readonly T[]) => T[]) =>
      fitCensoredTimes({
        covariates: { x: times(t.x), appliance: times(t.appliance) },
        lower: times(t.score.map((score, i) => (score === 0 ? t.look[i] : score === 1 ? t.look[i] - 2 : 0))),
        upper: times(t.score.map((score, i) => (score === 0 ? never : t.look[i]))),
      }),
  };

  it.each(Object.keys(fits) as (keyof typeof fits)[])("%s stands at a top or refuses by name", (name) => {
    let fitted = 0;
    let refused = 0;
    for (const trial of trials) {
      let fit: ReturnType<(typeof fits)[typeof name]>;
      try {
        fit = fits[name](trial, (values) => [...values]);
      } catch (error) {
        const { message } = error as Error;
        expect(message).toMatch(/^fit\w+: (x|appliance|x and appliance|checks|yes|score|trials|lower) must /);
        if (/separate|part|best value|scatter|one time/.test(message)) refused++;
        expect(message).not.toContain("search settle");
        continue;
      }
      fitted++;
      const again = fits[name](trial, twice);
      for (const one of fit.names) {
        const [single, double] = [fit.parameters[one], again.parameters[one]];
        expect(Math.abs(double.estimate - single.estimate)).toBeLessThan(1e-6 * (1 + Math.abs(single.estimate)));
        expect((single.standardError as number) / (double.standardError as number)).toBeCloseTo(Math.SQRT2, 5);
      }
    }
    expect(fitted).toBeGreaterThan(50);
    expect(refused).toBeGreaterThan(30);
  });
});
