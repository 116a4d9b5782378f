import { posteriorMode } from "slabwright/fit";
import { describe, expect, it } from "vitest";
import { standardMode } from "../../../../kernel-lib/library/src/fit/outcomes/standard-mode";

describe("standardMode", () => {
  it("solves a linear problem in its first steps: (JᵀJ + I)⁻¹Jᵀy, by hand", () => {
    // residuals y − J z with J = [[2, 0], [1, 1], [0, 3]], y = (2, 1, −3): JᵀJ + I = [[6, 1], [1, 11]], Jᵀy = (5, −8)
    const found = standardMode({
      start: [0.5, 0.5],
      residuals: ([a, b]) => Float64Array.of(2 - 2 * a, 1 - a - b, -3 - 3 * b),
    });
    expect(found.converged).toBe(true);
    expect(found.z[0]).toBeCloseTo((11 * 5 + 8) / 65, 3);
    expect(found.z[1]).toBeCloseTo((-6 * 8 - 5) / 65, 3);
    [
      [11 / 65, -1 / 65],
      [-1 / 65, 6 / 65],
    ].forEach((row, i) => {
      row.forEach((value, j) => {
        expect(found.covariance[i][j]).toBeCloseTo(value, 5);
      });
    });
    expect(found.iterations).toBeLessThan(8);
  });
  it("agrees with posteriorMode on a curve that bends, from near and far", () => {
    const seen = [2.9, 4.3, 6.6, 9.8];
    const residualsOf = (a: number, b: number): number[] =>
      seen.map((y, i) => (y - 2 * Math.exp(0.5 * a + 0.2 * b * i)) / 0.3);
    const other = posteriorMode({
      parameters: { a: 0, b: 0 },
      priors: { a: { mean: 0, sd: 1 }, b: { mean: 0, sd: 1 } },
      residuals: ({ a, b }) => residualsOf(a, b),
    });
    for (const start of [
      [0, 0],
      [-2, 3],
      [3, -2],
    ]) {
      const found = standardMode({ start, residuals: ([a, b]) => Float64Array.from(residualsOf(a, b)) });
      expect(found.converged).toBe(true);
      (["a", "b"] as const).forEach((name, j) => {
        const { estimate, standardError } = other.parameters[name];
        expect(Math.abs(found.z[j] - estimate)).toBeLessThan(0.02 * standardError!);
        expect(Math.sqrt(found.covariance[j][j]) / standardError!).toBeCloseTo(1, 2);
      });
    }
  });
  it("stays within six standard deviations of the prior", () => {
    const found = standardMode({ start: [0], residuals: ([a]) => Float64Array.of((40 - a) / 0.1) });
    expect(found.z[0]).toBe(6);
  });
  it("says when it stopped before it settled", () => {
    const far = { start: [5.9], residuals: ([a]: Float64Array) => Float64Array.of(10 * Math.exp(a) - 10) };
    const short = standardMode({ ...far, maxIterations: 1 });
    expect(short.converged).toBe(false);
    expect(short.reason).toBe("stopped after 1 steps without settling");
    const whole = standardMode(far);
    expect(whole.converged).toBe(true);
    expect(Math.abs(whole.z[0])).toBeLessThan(0.01);
    expect(whole.iterations).toBeGreaterThan(3);
  });
});
