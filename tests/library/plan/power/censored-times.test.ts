import { powerOfCensoredTimes, powerOfTwoMeans } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const everyMinute = Array.from({ length: 9 }, (_, at) => 7 + at);

describe("power of times seen at looks", () => {
  it("is that of the t test of log times where looks are so close that times are seen exactly", () => {
    const looksMin = Array.from({ length: 700 }, (_, at) => 5 + at * 0.02);
    const { power, monteCarloError, falseAlarms, falseAlarmsError } = powerOfCensoredTimes({
      timesMin: [10, 11.5],
      scale: 0.09,
      distribution: "lognormal",
      looksMin,
      trials: 6,
      draws: 400,
    });
    const exact = powerOfTwoMeans({ difference: Math.log(1.15), sd: 0.09 }, 6);
    expect(Math.abs(power - exact)).toBeLessThan(4 * monteCarloError);
    expect(Math.abs(falseAlarms - 0.05)).toBeLessThan(4 * falseAlarmsError);
  });

  it("falls as the looks move apart, and no log is judged whose looks show no scatter", () => {
    const asked = { timesMin: [10, 11.5], scale: 0.05, trials: 5, draws: 120 } as const;
    const close = powerOfCensoredTimes({ ...asked, looksMin: everyMinute });
    const wide = powerOfCensoredTimes({ ...asked, looksMin: [8, 12, 16] });
    expect(wide.power).toBeLessThan(close.power);
    expect(wide.undecided).toBeGreaterThan(close.undecided);
    expect(wide.power + wide.undecided).toBeLessThanOrEqual(1);
  });

  it("gives the same answer for the same seed, another for another", () => {
    const asked = { timesMin: [10, 11], scale: 0.05, looksMin: everyMinute, trials: 6, draws: 40 } as const;
    expect(powerOfCensoredTimes(asked)).toEqual(powerOfCensoredTimes(asked));
    expect(powerOfCensoredTimes({ ...asked, seed: 2 })).not.toEqual(powerOfCensoredTimes(asked));
  });

  it("refuses looks that do not rise, and two trials", () => {
    const asked = { timesMin: [10, 12], scale: 0.05, looksMin: [8, 8, 9], trials: 6 } as const;
    expect(() => powerOfCensoredTimes(asked)).toThrow("looksMin must be times above 0 that rise");
    expect(() => powerOfCensoredTimes({ ...asked, looksMin: [8, 9], trials: 2 })).toThrow("trials must be");
  });
});
