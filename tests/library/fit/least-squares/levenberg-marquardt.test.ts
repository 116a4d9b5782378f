import { curves, fitCurve } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

describe("bounds of levenbergMarquardt", () => {
  it("end where no allowed move lowers the sum of squares (Karush-Kuhn-Tucker), over 300 random slab-time sets", () => {
    const random = seededRandom(21);
    const seen = { c0: 0, a: 0, b: 0 };
    for (let run = 0; run < 300; run++) {
      const x = Array.from({ length: 9 }, () => 4 + 18 * random.uniform());
      const [c0, a, b] = [random.normal(1, 3), random.normal(0.4, 0.6), random.normal(0.02, 0.04)];
      const y = x.map((v) => c0 + a * v + b * v * v + random.normal(0, 0.5));
      const fit = fitCurve(curves.slabTime, { x, y });
      expect(fit.converged).toBe(true);
      const basis = { c0: (): number => 1, a: (v: number): number => v, b: (v: number): number => v * v };
      for (const name of ["c0", "a", "b"] as const) {
        const columns = x.map(basis[name]);
        const size = Math.hypot(...columns) * Math.hypot(...fit.residuals);
        const pull = columns.reduce((sum, value, i) => sum + value * fit.residuals[i], 0) / size;
        if (fit.parameters[name].atBound === "lower") {
          seen[name]++;
          expect(pull).toBeLessThan(1e-7);
        } else {
          expect(fit.parameters[name].estimate).toBeGreaterThan(0);
          expect(Math.abs(pull)).toBeLessThan(1e-7);
        }
      }
    }
    // the random sets press against every bound at some time, or the check above would prove little
    expect(Math.min(seen.c0, seen.a, seen.b)).toBeGreaterThan(10);
  });
  it("hold in a nonlinear curve from starts on, inside and beyond them", () => {
    const x = [0.1, 0.2, 0.5, 1, 2, 3];
    const y = [49, 71, 112, 131, 148, 150];
    const free = fitCurve(curves.hyperbola, { x, y });
    for (const half of [0.15, 0.2, 0.5, 4]) {
      const inside = fitCurve(
        curves.hyperbola,
        { x, y },
        { start: { half }, lower: { half: 0.15 }, upper: { half: 0.5 } },
      );
      expect(inside.parameters.half.estimate).toBeCloseTo(free.parameters.half.estimate, 7);
      const pressed = fitCurve(
        curves.hyperbola,
        { x, y },
        { start: { half }, lower: { half: 0.3 }, upper: { half: 0.5 } },
      );
      expect(pressed.parameters.half).toMatchObject({ estimate: 0.3, atBound: "lower" });
    }
  });
});
