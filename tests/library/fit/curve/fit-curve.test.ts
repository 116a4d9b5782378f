import fc from "fast-check";
import { curveModel, curves, fitCurve, fitSlabTime, predictCurve } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const data = { x: [0.1, 0.2, 0.5, 1, 2, 0.2, 1, 3], y: [49, 71, 112, 131, 148, 76, 137, 150] };
const plain = fitCurve(curves.hyperbola, data);
const near = (got: number | null, wanted: number | null, digits = 7): void => {
  expect(Math.abs((got ?? 0) - (wanted ?? 0))).toBeLessThanOrEqual(10 ** -digits * Math.abs(wanted ?? 0));
};

describe("fitCurve keeps its properties", () => {
  it("scaling y scales the answer and its doubt", () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (power) => {
        const c = 10 ** power;
        const fit = fitCurve(curves.hyperbola, { x: data.x, y: data.y.map((v) => v * c) });
        near(fit.parameters.top.estimate, plain.parameters.top.estimate * c);
        near(fit.parameters.top.standardError, (plain.parameters.top.standardError ?? 0) * c);
        near(fit.parameters.half.estimate, plain.parameters.half.estimate);
        near(fit.rss, plain.rss * c * c);
      }),
      { numRuns: 40 },
    );
  });
  it("scaling x scales the answer and its doubt", () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (power) => {
        const c = 10 ** power;
        const fit = fitCurve(curves.hyperbola, { x: data.x.map((v) => v * c), y: data.y });
        near(fit.parameters.half.estimate, plain.parameters.half.estimate * c);
        near(fit.parameters.half.standardError, (plain.parameters.half.standardError ?? 0) * c);
        near(
          predictCurve(curves.hyperbola, fit, c).confidence95[0],
          predictCurve(curves.hyperbola, plain, 1).confidence95[0],
        );
      }),
      { numRuns: 40 },
    );
  });
  it("permuting rows changes nothing", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7], { minLength: 8 }), (order) => {
        const fit = fitCurve(curves.hyperbola, { x: order.map((i) => data.x[i]), y: order.map((i) => data.y[i]) });
        near(fit.parameters.top.estimate, plain.parameters.top.estimate, 9);
        near(fit.parameters.half.standardError, plain.parameters.half.standardError, 8);
        near(fit.aicc, plain.aicc, 9);
      }),
      { numRuns: 30 },
    );
  });
  it("a weight of 2 gives the curve of a doubled row; only the count of observations differs", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7 }), (row) => {
        const weighted = fitCurve(curves.hyperbola, { ...data, weights: data.x.map((_, i) => (i === row ? 2 : 1)) });
        const doubled = fitCurve(curves.hyperbola, { x: [...data.x, data.x[row]], y: [...data.y, data.y[row]] });
        near(weighted.parameters.top.estimate, doubled.parameters.top.estimate);
        near(weighted.parameters.half.estimate, doubled.parameters.half.estimate);
        near(weighted.rss, doubled.rss);
        const inflate = Math.sqrt(doubled.degreesOfFreedom / weighted.degreesOfFreedom);
        near(weighted.parameters.half.standardError, (doubled.parameters.half.standardError ?? 0) * inflate);
      }),
    );
  });
  it("a common factor on all weights changes nothing but the residual sd", () => {
    const fit = fitCurve(curves.hyperbola, { ...data, weights: data.x.map(() => 7) });
    near(fit.parameters.half.standardError, plain.parameters.half.standardError);
    near(fit.aicc, plain.aicc);
    near(fit.residualSd, plain.residualSd * Math.sqrt(7));
  });
  it("noiseless data return the curve that made them, from the model's own guess", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        (top, half) => {
          const x = [0.1, 0.3, 1, 3, 10, 30];
          const fit = fitCurve(curves.hyperbola, { x, y: x.map((v) => (top * v) / (half + v)) });
          near(fit.parameters.top.estimate, top, 8);
          near(fit.parameters.half.estimate, half, 8);
        },
      ),
    );
  });
  it("returns frozen data with leverage that sums to the number of parameters", () => {
    expect(Object.isFrozen(plain) && Object.isFrozen(plain.parameters.top) && Object.isFrozen(plain.x)).toBe(true);
    expect(plain.leverage.reduce((sum, one) => sum + one, 0)).toBeCloseTo(2, 9);
  });
  it("tries every start that a model offers and keeps the best", () => {
    const x = Array.from({ length: 25 }, (_, i) => i / 4);
    const y = x.map((v, i) => 2 * Math.sin(3 * v) + 0.05 * Math.cos(17 * i));
    const wave = curveModel({
      name: "wave",
      evaluate: (v, { height, rate }) => height * Math.sin(rate * v),
      start: [0.3, 1, 2, 3.3, 5].map((rate) => ({ height: 1, rate })),
    });
    expect(fitCurve(wave, { x, y }).parameters.rate.estimate).toBeCloseTo(3, 2);
  });
});

describe("fitCurve refuses, in a sentence that says what to do", () => {
  const fit = (x: number[], y: number[], weights?: number[]) => () => fitCurve(curves.line, { x, y, weights });
  it("fewer points than parameters, or as many", () => {
    expect(fit([1, 2], [3, 4])).toThrow(
      "must have more points than its 2 free parameters, so that a scatter can be estimated: log more trials",
    );
  });
  it("one x only", () => expect(fit([2, 2, 2], [3, 4, 5])).toThrow("log trials at a second x"));
  it("constant y", () => expect(fit([1, 2, 3], [4, 4, 4])).toThrow("no curve can be told from a flat line"));
  it("NaN, naming its place", () =>
    expect(fit([1, 2, 3], [4, Number.NaN, 4])).toThrow("fitCurve: y[1] must be a finite number, got NaN"));
  it("zero weights", () =>
    expect(fit([1, 2, 3], [4, 5, 7], [1, 0, 1])).toThrow("weights[1] must be > 0; to leave a point out"));
  it("unequal lengths", () => expect(fit([1, 2], [4, 5, 7])).toThrow("x and y must be equally long"));
  it("a start at which the model is not finite", () => {
    const root = curveModel({ name: "root", evaluate: (x, { a }) => Math.sqrt(a - x), start: { a: 1 } });
    expect(() => fitCurve(root, { x: [1, 2, 3], y: [4, 5, 7] })).toThrow("give other ones in `start`");
  });
  it("a prediction from a fit that leaves a parameter undetermined", () => {
    const twice = curveModel({ name: "twice", evaluate: (x, { a, b }) => a * b * x, start: { a: 1, b: 1 } });
    const undetermined = fitCurve(twice, { x: [1, 2, 3, 4], y: [2.1, 3.9, 6.2, 7.8] });
    expect(() => predictCurve(twice, undetermined, 2)).toThrow("must have converged");
  });
});

describe("predictCurve", () => {
  it("flags an x outside the points, its ends being inside, of a number or of a record", () => {
    const at = (x: number): boolean => predictCurve(curves.hyperbola, plain, x).extrapolated;
    expect([at(0.099), at(0.1), at(1.7), at(3), at(3.001)]).toEqual([true, false, false, false, true]);
    const plane = curveModel<"a" | "b", { time: number; kind: string }>({
      name: "plane",
      evaluate: (x, { a, b }) => a + b * x.time + (x.kind === "north" ? 1 : 0),
      start: { a: 0, b: 1 },
    });
    const x = [1, 2, 3, 5].map((time, i) => ({ time, kind: i % 2 ? "north" : "south" }));
    const fit = fitCurve(plane, { x, y: [1.1, 3.2, 2.9, 6.1] });
    const there = (time: number): boolean => predictCurve(plane, fit, { time, kind: "east" }).extrapolated;
    expect([there(0.9), there(1), there(5), there(5.1)]).toEqual([true, false, false, true]);
  });
});

describe("outliers", () => {
  it("are told by their weight: the same distance says more of a point that was measured better", () => {
    const x = [1, 2, 3, 4, 5, 6, 7, 8];
    const y = [2.1, 3.9, 6.1, 8.2, 10.9, 12.1, 13.8, 16.1];
    const named = (weight: number): boolean =>
      fitCurve(curves.line, { x, y, weights: x.map((_, i) => (i === 4 ? weight : 1)) }).notices.some((notice) =>
        notice.startsWith("Point 5"),
      );
    expect(named(1)).toBe(true);
    expect(named(0.02)).toBe(false);
  });
  it("are told from four points of a line, and from three never: nothing is left to tell them by", () => {
    const notices = (x: number[], y: number[]) => fitCurve(curves.line, { x, y }).notices.join(" ");
    expect(notices([0, 1, 2, 3, 4], [0, 1.0001, 9, 3, 3.9999])).toContain("Point 3 (x = 2) lies above");
    expect(notices([0, 1, 2, 3], [0, 1.0001, 9, 3])).toContain("Point 3 (x = 2) lies above");
    expect(notices([0, 1, 2], [0, 9, 2])).toBe("");
  });
  it("are named and never removed", () => {
    const x = [1, 2, 3, 4, 5, 6, 7, 8];
    const fit = fitCurve(curves.line, { x, y: [2.1, 3.9, 6.1, 8.2, 9.8, 12.1, 25, 16.1] });
    expect(fit.n).toBe(8);
    expect(fit.notices.join(" ")).toMatch(/Point 7 \(x = 7\) lies above the curve by .* It has not been removed\./);
  });
  it("are not seen in clean normal scatter", () => {
    const fit = fitSlabTime({
      thicknessMm: [6, 6, 9, 9, 12, 12, 16, 16],
      timeMin: [8.9, 9.3, 11.6, 11.2, 14.3, 14.7, 19.2, 18.7],
      form: "linear",
    });
    expect(fit.notices).toEqual([]);
  });
});
