import { describe, expect, it } from "vitest";
import { windowCoverage } from "../../../../kernel-lib/library/src/crisp/window/window-coverage";
import { food } from "../sample-food";

describe("windowCoverage", () => {
  const result = windowCoverage({ food, kitchens: 200, seed: 1 });

  it("holds the truth in 90 to 99 % of 95 % intervals, together and kind by kind", () => {
    expect(result.kitchens).toBe(200);
    expect(result.held95).toBeGreaterThanOrEqual(0.9);
    expect(result.held95).toBeLessThanOrEqual(0.99);
    for (const { of, held, tried } of result.rows) {
      expect(tried, of).toBeGreaterThan(100);
      expect(held / tried, of).toBeGreaterThanOrEqual(0.9);
      expect(held / tried, of).toBeLessThanOrEqual(0.99);
    }
  });

  it("states chances of success that come true", () => {
    const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(Math.abs(mean(result.stated) - mean(result.realised))).toBeLessThan(0.03);
    for (const [low, high] of [
      [0, 0.3],
      [0.3, 0.8],
      [0.8, 0.97],
      [0.97, 1.01],
    ]) {
      const inside = result.stated
        .map((_, at) => at)
        .filter((at) => result.stated[at] >= low && result.stated[at] < high);
      expect(inside.length).toBeGreaterThan(10);
      const miss = mean(inside.map((at) => result.realised[at])) - mean(inside.map((at) => result.stated[at]));
      const spread = Math.sqrt(mean(inside.map((at) => (result.realised[at] - result.stated[at]) ** 2)));
      expect(Math.abs(miss)).toBeLessThan(Math.max(0.01, (3 * spread) / Math.sqrt(inside.length)));
    }
  });

  it("leaves fewer pieces with a cold core than it allows for", () => {
    expect(result.unsafe).toBeLessThanOrEqual(0.005);
    const spread = result.stated.filter((chance) => chance > 0.01 && chance < 0.99).length;
    expect(spread).toBeGreaterThan(40);
  });
}, 120_000);
