import fc from "fast-check";
import { curveModel, curves, fitCurve } from "slabwright/fit";
import { gradientModel, optimalDesign } from "slabwright/plan";
import { describe, expect, it } from "vitest";

describe("gradientModel", () => {
  it("without derivatives of its own, finds those that a ready curve states", () => {
    const positive = fc.double({ min: 0.05, max: 20, noNaN: true });
    fc.assert(
      fc.property(positive, positive, positive, (top, half, x) => {
        const at = { top, half };
        const stated = gradientModel({ model: curves.hyperbola, at });
        const bare = curveModel({ name: "hyperbola", evaluate: curves.hyperbola.evaluate, start: at });
        gradientModel({ model: bare, at })
          .row(x)
          .forEach((slope, j) => {
            expect(slope / stated.row(x)[j]).toBeCloseTo(1, 6);
          });
      }),
    );
  });

  it("reads values off a fit, and counts what it holds or what rests at a bound as known", () => {
    const data = { x: [0, 2, 5, 9, 14], y: [10.1, 6.6, 3.7, 1.7, 0.5] };
    const free = fitCurve(curves.firstOrderDecay, data);
    const { start, rate } = free.parameters;
    const byValues = gradientModel({
      model: curves.firstOrderDecay,
      at: { start: start.estimate, rate: rate.estimate },
    });
    const byFit = gradientModel({ model: curves.firstOrderDecay, at: free });
    expect(byFit.row(4)).toEqual(byValues.row(4));
    expect(byFit.terms).toEqual(["start", "rate"]);
    const held = fitCurve(curves.firstOrderDecay, data, { fixed: { start: 10 } });
    const rateAlone = gradientModel({ model: curves.firstOrderDecay, at: held });
    expect(rateAlone.terms).toEqual(["rate"]);
    expect(rateAlone.row(4)[0]).toBeCloseTo(-4 * 10 * Math.exp(-4 * held.parameters.rate.estimate), 8);
    // y falls below a line through the middle: c0 rests at its bound 0
    const slab = fitCurve(curves.slabTime, { x: [6, 8, 10, 12, 14], y: [3.7, 6.3, 10.1, 14.5, 19.4] });
    expect(slab.names.some((name) => slab.parameters[name].atBound !== null)).toBe(true);
    const open = slab.names.filter((name) => slab.parameters[name].atBound === null);
    expect(gradientModel({ model: curves.slabTime, at: slab }).terms).toEqual(open);
  });

  it("a plan for a covariate curve takes records as candidates", () => {
    const model = curveModel<"a" | "b", { air: number; time: number }>({
      name: "browning",
      evaluate: ({ air, time }, { a, b }) => a * time * Math.exp(b * air),
      start: { a: 1, b: 0.1 },
    });
    const candidates = [0, 1, 2].flatMap((air) => [1, 2].map((time) => ({ air, time })));
    const { points } = optimalDesign({ candidates, model: gradientModel({ model, at: { a: 1, b: 0.1 } }), runs: 2 });
    expect(points).toEqual([
      { air: 0, time: 2 },
      { air: 2, time: 2 },
    ]);
  });

  it("refuses values that are missing, and fits that leave nothing open or did not converge", () => {
    const model = curves.firstOrderDecay;
    expect(() => gradientModel({ model, at: { start: 1 } as never })).toThrow("at.rate must be a finite number");
    const fit = fitCurve(model, { x: [0, 2, 5], y: [10, 6.6, 3.7] });
    expect(() => gradientModel({ model, at: { ...fit, converged: false } })).toThrow("must be a fit that converged");
    const known = { ...fit.parameters.rate, fixed: true };
    expect(() => gradientModel({ model, at: { ...fit, parameters: { start: known, rate: known } } })).toThrow(
      "at least one parameter to be told",
    );
  });
});
