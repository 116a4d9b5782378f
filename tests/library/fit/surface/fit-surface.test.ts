import { fitSurface, predictLinear, surfaceAt } from "slabwright/fit";
import { centralComposite } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const factors = ["air", "time"];
const { points, blocks } = centralComposite({ factors: 2, alpha: "blocks" });
const y = points.map(([a, b], at) => 5 + a - 0.5 * b + 0.3 * a * b - a * a - 2 * b * b + 0.05 * Math.sin(7 * at));

describe("fitSurface", () => {
  it("counts blocks apart without moving the slopes, where they are orthogonal to them", () => {
    const whole = fitSurface({ factors, points, y });
    const stepped = fitSurface({ factors, points, y: y.map((value, at) => value + 3 * blocks[at]), blocks });
    for (const name of ["air", "time", "air*time", "air^2", "time^2"])
      expect(stepped.parameters[name].estimate).toBeCloseTo(whole.parameters[name].estimate, 9);
    // both blocks alike: the middle of 3 and 6 above
    expect(stepped.middle - whole.middle).toBeCloseTo(4.5, 1);
    expect(surfaceAt(stepped, [0, 0]).value).toBeCloseTo(stepped.middle, 12);
  });

  it("is the regression that its name says", () => {
    const fit = fitSurface({ factors, points, y });
    const at = { air: 0.3, time: -0.2, "air*time": -0.06, "air^2": 0.09, "time^2": 0.04 };
    expect(surfaceAt(fit, [0.3, -0.2]).value).toBeCloseTo(predictLinear(fit, at).value, 12);
    expect(surfaceAt(fit, [0.3, -0.2]).standardError).toBeCloseTo(predictLinear(fit, at).standardError, 12);
    expect(surfaceAt(fit, [3, 0]).extrapolated).toBe(true);
  });

  it("says in one sentence what to run", () => {
    const cube = [
      [-1, -1],
      [1, -1],
      [-1, 1],
      [1, 1],
      [1, 1],
      [-1, 1],
      [1, -1],
    ];
    expect(() => fitSurface({ factors, points: cube, y: [1, 2, 3, 4, 5, 6, 7] })).toThrow(
      'fitSurface: air must stand at 3 levels or more for a quadratic surface: run another level, or take "interactions", got 2',
    );
    const line = cube.map(([a]) => [a, 1]);
    expect(() => fitSurface({ factors, points: line, y: [1, 2, 3, 4, 5, 6, 7], form: "linear" })).toThrow(
      "time must stand at 2 levels or more",
    );
    expect(() => fitSurface({ factors, points: [[1]], y: [1] })).toThrow("must hold a number for each of air, time");
  });
});
