import { curves, fitCurve, leastSquares } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

describe("the search of levenbergMarquardt", () => {
  const x = [0.1, 0.2, 0.5, 1, 2, 3];
  const y = [49, 71, 112, 131, 148, 150];

  it("never asks the model for values outside the bounds, wherever between them it starts", () => {
    for (const scale of [1, 1e6])
      for (const [start, lower, upper] of [
        [0.3, 0.3, 4],
        [4, 0.1, 4],
        [0.2, 0.1, 0.2],
        [0.4 - 2e-9, 0.1, 0.4],
        [0.25, 0.1, 0.4],
      ]) {
        const seen: number[] = [];
        leastSquares({
          parameters: { top: 100, half: { start: start * scale, lower: lower * scale, upper: upper * scale } },
          residuals: ({ top, half }) => {
            seen.push(half / scale);
            return x.map((value, i) => y[i] - (top * value) / (half / scale + value));
          },
        });
        expect(seen.length).toBeGreaterThan(5);
        for (const half of seen) {
          expect(half).toBeGreaterThanOrEqual(lower * (1 - 1e-15));
          expect(half).toBeLessThanOrEqual(upper * (1 + 1e-15));
        }
      }
  });

  it("takes a straight line in full steps: settled within four, from far away", () => {
    for (const far of [0, 10, -1e4]) {
      const fit = leastSquares({
        parameters: { a: far, b: 1 - far },
        residuals: ({ a, b }) => x.map((value, i) => y[i] - a - b * value),
        jacobian: () => [x.map(() => -1), x.map((value) => -value)],
      });
      expect(fit.converged).toBe(true);
      expect(fit.iterations).toBeLessThanOrEqual(4);
    }
  });

  it("goes the same way whatever the units of a parameter, short steps from a bad start included", () => {
    const hill = (unit: number) =>
      leastSquares({
        parameters: { top: 400, rate: 9 * unit },
        residuals: ({ top, rate }) => x.map((value, i) => y[i] - top * (1 - Math.exp((-rate / unit) * value))),
        jacobian: ({ top, rate }) => [
          x.map((value) => Math.exp((-rate / unit) * value) - 1),
          x.map((value) => (-top * value * Math.exp((-rate / unit) * value)) / unit),
        ],
      });
    const plain = hill(1);
    expect(plain.converged).toBe(true);
    for (const unit of [2 ** 20, 2 ** -20]) {
      const other = hill(unit);
      expect(other.iterations).toBe(plain.iterations);
      expect(other.parameters.rate.estimate / unit).toBeCloseTo(plain.parameters.rate.estimate, 9);
    }
  });

  it("calls a noiseless fit settled though rounding is all that its residuals hold", () => {
    const random = seededRandom(7);
    const times = [0.1, 0.3, 1, 3, 10, 30];
    const reasons = new Set<string>();
    for (let run = 0; run < 400; run++) {
      const [top, half] = [10 ** (4 * random.uniform() - 2), 10 ** (3 * random.uniform() - 1.5)];
      const added = 100 * top * random.uniform();
      const seen = times.map((t) => added + (top * t) / (half + t));
      const fit = leastSquares({
        parameters: { top: top * (0.3 + 2 * random.uniform()), half: half * (0.3 + 2 * random.uniform()) },
        residuals: (at) => times.map((t, i) => seen[i] - (added + (at.top * t) / (at.half + t))),
      });
      expect(fit.converged, fit.reason).toBe(true);
      reasons.add(fit.reason);
    }
    expect(reasons).toContain("converged: the residuals are zero to rounding");
  });

  it("stops by itself where rounding lets the sum of squares fall no further", () => {
    // residuals of a size at which each differs by rounding alone near the end
    const fit = leastSquares({
      parameters: { top: 100, half: 0.3 },
      residuals: ({ top, half }) => x.map((value, i) => 1e9 + y[i] - (top * value) / (half + value) - 1e9),
    });
    expect(fit.converged).toBe(true);
    expect(fit.iterations).toBeLessThan(40);
  });
});

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
