import { describe, expect, it } from "vitest";
import { maximiseLikelihood } from "../../../../kernel-lib/library/src/fit/outcomes/maximise-likelihood";

describe("maximiseLikelihood", () => {
  it("stands on the top of a parabola, with the inverse of minus its curvature as covariance", () => {
    // −½ (θ − c)ᵀ A (θ − c), A = [[4, 1], [1, 2]], c = (3, −1)
    const top = maximiseLikelihood({
      start: [100, -50],
      derivatives: ([x, y], gradient, hessian) => {
        const [u, v] = [x - 3, y + 1];
        gradient[0] = -(4 * u + v);
        gradient[1] = -(u + 2 * v);
        hessian[0] = [-4, -1];
        hessian[1] = [-1, -2];
        return -0.5 * (4 * u * u + 2 * u * v + 2 * v * v);
      },
    });
    expect(top.converged).toBe(true);
    expect(top.parameters[0]).toBeCloseTo(3, 10);
    expect(top.parameters[1]).toBeCloseTo(-1, 10);
    expect(top.logLikelihood).toBeCloseTo(0, 10);
    expect(top.covariance![0][0]).toBeCloseTo(2 / 7, 12);
    expect(top.covariance![0][1]).toBeCloseTo(-1 / 7, 12);
    expect(top.covariance![1][1]).toBeCloseTo(4 / 7, 12);
    expect(top.iterations).toBeLessThan(6);
  });
  it("finds its way where full steps overshoot or leave what is allowed", () => {
    // n log λ − λ s of ten waits that last 20 together: top at 0.5, not allowed at 0 and below
    for (const start of [1e-3, 0.4, 0.99, 30]) {
      const top = maximiseLikelihood({
        start: [start],
        derivatives: ([rate], gradient, hessian) => {
          if (!(rate > 0)) return Number.NEGATIVE_INFINITY;
          gradient[0] = 10 / rate - 20;
          hessian[0] = [-10 / rate ** 2];
          return 10 * Math.log(rate) - 20 * rate;
        },
      });
      expect(top.converged).toBe(true);
      expect(top.parameters[0]).toBeCloseTo(0.5, 9);
      expect(top.covariance![0][0]).toBeCloseTo(0.025, 9);
    }
  });
  it("climbs out of a hollow, where the curvature is of the wrong sign", () => {
    // −x⁴/4 + x²/2: a hollow at 0, tops at ±1
    const top = maximiseLikelihood({
      start: [0.2],
      derivatives: ([x], gradient, hessian) => {
        gradient[0] = x - x ** 3;
        hessian[0] = [1 - 3 * x * x];
        return 0.5 * x * x - 0.25 * x ** 4;
      },
    });
    expect(top.converged).toBe(true);
    expect(Math.abs(top.parameters[0])).toBeCloseTo(1, 8);
    expect(top.covariance![0][0]).toBeCloseTo(0.5, 6);
  });
  it("says that there is no top where the likelihood climbs for ever, or along a ridge", () => {
    const slope = maximiseLikelihood({
      start: [0],
      derivatives: ([x], gradient, hessian) => {
        gradient[0] = 1 / (1 + Math.exp(x));
        hessian[0] = [-Math.exp(-x) / (1 + Math.exp(-x)) ** 2];
        return -Math.log1p(Math.exp(-x));
      },
    });
    expect(slope.parameters[0]).toBeGreaterThan(20);
    const ridge = maximiseLikelihood({
      start: [5, 5],
      derivatives: ([x, y], gradient, hessian) => {
        const sum = x + y - 2;
        gradient[0] = -sum;
        gradient[1] = -sum;
        hessian[0] = [-1, -1];
        hessian[1] = [-1, -1];
        return -0.5 * sum * sum;
      },
    });
    expect(ridge.converged).toBe(false);
    expect(ridge.covariance).toBeNull();
    expect(ridge.reason).toContain("no clear top");
    const plane = maximiseLikelihood({
      start: [0],
      derivatives: (_, gradient, hessian) => {
        gradient[0] = 1;
        hessian[0] = [0];
        return 0;
      },
    });
    expect(plane.converged).toBe(false);
    expect(plane.covariance).toBeNull();
  });
  it("does not call a search settled that ran out of steps on its way up", () => {
    // a step of one at a time along a slope that never ends, with curvature that looks like a top's
    const endless = maximiseLikelihood({
      start: [0],
      derivatives: ([x], gradient, hessian) => {
        gradient[0] = 1;
        hessian[0] = [-1];
        return x;
      },
    });
    expect(endless.converged).toBe(false);
    expect(endless.covariance).not.toBeNull();
    expect(endless.iterations).toBe(200);
  });
});
