import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";
import { expectedImprovement, posterior } from "./expected-improvement";

const places = Array.from({ length: 33 }, (_, at) => [-1 + at / 16]);

describe("posterior", () => {
  it("is that of one noisy value in closed form", () => {
    const { mean, covariance } = posterior([{ at: [0], value: 1 }], [[0], [0.2]], 0.2, 0.3);
    const [prior, noise, across] = [0.16, 0.09, 0.16 * Math.exp(-0.5)];
    expect(mean[0]).toBeCloseTo(0.4 + (prior / (prior + noise)) * 0.6, 12);
    expect(mean[1]).toBeCloseTo(0.4 + (across / (prior + noise)) * 0.6, 12);
    expect(covariance[0][0]).toBeCloseTo(prior - prior ** 2 / (prior + noise), 12);
    expect(covariance[0][1]).toBeCloseTo(across - (prior * across) / (prior + noise), 12);
  });
});

describe("expectedImprovement", () => {
  it("starts in the middle", () => {
    expect(expectedImprovement({ seen: [], places, random: seededRandom(1) })).toEqual([0]);
  });

  it("finds the top of a hill that is seen through noise", () => {
    const random = seededRandom(5);
    const hill = (at: number): number => Math.exp(-(((at - 0.35) / 0.25) ** 2));
    const seen: { at: readonly number[]; value: number }[] = [];
    for (let trial = 0; trial < 14; trial++) {
      const at = expectedImprovement({ seen, places, random });
      seen.push({ at, value: hill(at[0]) + 0.1 * random.normal() });
    }
    const late = seen.slice(-6).map(({ at }) => hill(at[0]));
    expect(late.filter((height) => height > 0.8).length).toBeGreaterThanOrEqual(4);
  });
});
