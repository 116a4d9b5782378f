import { type CurveModel, curves, fitCurve, type Values } from "slabwright/fit";
import { describe, expect, it } from "vitest";

interface Case {
  readonly model: CurveModel<string>;
  readonly truth: Values;
  readonly x: readonly number[];
  readonly fixed?: Values;
}
const many = (from: number, to: number, count = 9): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
const of = <Name extends string>(
  model: CurveModel<Name>,
  truth: Values<Name>,
  x: readonly number[],
  fixed?: Values,
): Case => ({
  model: model as unknown as CurveModel<string>,
  truth,
  x,
  fixed,
});

const CASES: readonly Case[] = [
  of(curves.line, { a: 3, b: -0.4 }, many(2, 20)),
  of(curves.polynomial(3), { b0: 1, b1: -2, b2: 0.5, b3: 0.02 }, many(-3, 6)),
  of(curves.powerLaw, { a: 0.7, p: 1.4 }, many(3, 25)),
  of(curves.exponentialApproach, { end: 180, start: 20, rate: 0.15 }, many(0, 20)),
  of(curves.exponentialApproach, { end: 5, start: 90, rate: 2 }, many(0, 3)),
  of(curves.logistic, { bottom: 1, top: 8, middle: 12, width: 1.5 }, many(5, 20)),
  of(curves.logistic, { bottom: 0, top: 8, middle: 12, width: -1.5 }, many(5, 20), { bottom: 0 }),
  of(curves.fermi, { top: 9, middle: 0.5, width: 0.08 }, many(0.1, 0.9)),
  of(curves.hyperbola, { top: 210, half: 0.06 }, many(0.02, 1.1)),
  of(curves.firstOrderDecay, { start: 40, rate: 0.3 }, many(0, 10)),
  of(curves.lewis, { rate: 0.21 }, many(0, 12)),
  of(curves.page, { rate: 0.08, power: 1.3 }, many(0, 12)),
  of(curves.hendersonPabis, { start: 1.05, rate: 0.21 }, many(0, 12)),
  of(curves.slabTime, { c0: 4, a: 0.6, b: 0.03 }, many(5, 20)),
  of(curves.slabTimePower, { a: 0.9, p: 1.2 }, many(5, 20)),
  of(curves.arrhenius({ referenceC: 170 }), { rate: 0.0012, activationKJ: 64 }, many(120, 220)),
];

describe("ready curves", () => {
  for (const { model, truth, x, fixed } of CASES) {
    it(`${model.name} (${JSON.stringify(truth)}): guess leads home from exact data`, () => {
      const fit = fitCurve(model, { x, y: x.map((v) => model.evaluate(v, truth)) }, { fixed });
      expect(fit.converged).toBe(true);
      for (const [name, value] of Object.entries(truth)) {
        expect(Math.abs(fit.parameters[name].estimate - value)).toBeLessThanOrEqual(
          1e-6 * Math.max(1, Math.abs(value)),
        );
      }
    });
    it(`${model.name} (${JSON.stringify(truth)}): gradient agrees with differences`, () => {
      if (!model.gradient) throw new Error("a ready curve has a gradient");
      for (const at of x) {
        const slopes = model.gradient(at, truth);
        Object.keys(model.parameters).forEach((name, j) => {
          const step = 1e-5 * Math.max(1e-2, Math.abs(truth[name]));
          const moved = (by: number): number => model.evaluate(at, { ...truth, [name]: truth[name] + by });
          const difference = (moved(step) - moved(-step)) / (2 * step);
          expect(Math.abs(slopes[j] - difference)).toBeLessThanOrEqual(
            1e-6 * (Math.abs(difference) + Math.abs(moved(0))),
          );
        });
      }
    });
  }
  it("arrhenius reads the browning constants back from the rates they make", () => {
    // Zanoni, Peri & Bruno 1995 (LWT 28:604-609): k0 42000 1/s, Ea 64151 J/mol; rates at 120 to 220 C worked out from them
    const x = [120, 140, 160, 180, 204, 220];
    const y = [0.000125949, 0.000325674, 0.000771385, 0.00169318, 0.00398692, 0.00673726];
    const fit = fitCurve(curves.arrhenius({ referenceC: 180 }), { x, y });
    expect(fit.parameters.activationKJ.estimate).toBeCloseTo(64.151, 3);
    expect(fit.parameters.rate.estimate).toBeCloseTo(0.00169318, 8);
  });
  it("polynomial refuses a degree that is not a whole number from 1 to 6", () => {
    expect(() => curves.polynomial(2.5)).toThrow("degree must be a whole number from 1 to 6, got 2.5");
  });
});

describe("ready curves on points that their logarithms cannot take", () => {
  // noise about a curve that has died away goes below zero, and a dry start is at 1 exactly
  const x = [0, 2, 4, 6, 9, 12, 16, 20, 25, 30];
  const wobble = [0, 0.01, -0.012, 0.008, -0.006, 0.011, -0.02, 0.006, -0.01, 0];
  const decay = x.map((v, i) => Math.exp(-0.21 * v) + wobble[i]);

  it("fit drying and decay that pass below zero and start at 1", () => {
    expect(Math.min(...decay)).toBeLessThan(0);
    const cases: readonly (readonly [CurveModel<string>, string, number])[] = [
      [curves.lewis, "rate", 0.21],
      [curves.page, "power", 1],
      [curves.hendersonPabis, "rate", 0.21],
      [curves.firstOrderDecay, "rate", 0.21],
    ] as never;
    for (const [model, name, wanted] of cases) {
      const fit = fitCurve(model, { x, y: decay });
      expect(fit.converged).toBe(true);
      const { estimate, standardError } = fit.parameters[name];
      expect(Math.abs(estimate - wanted)).toBeLessThan(4 * (standardError ?? 0));
    }
  });
  it("fit a decay of negative values, and a hyperbola and a power law that hold a zero", () => {
    const negative = fitCurve(curves.firstOrderDecay, { x, y: decay.map((value) => -40 * value) });
    expect(negative.parameters.start.estimate).toBeCloseTo(-40, 0);
    const rising = [0, 0.5, 1, 2, 4, 8];
    const touched = rising.map((v, i) => (10 * v) / (2 + v) + 0.05 * (i % 2) - (i === 1 ? 2.05 : 0));
    expect(touched).toContain(0);
    expect(fitCurve(curves.hyperbola, { x: rising, y: touched }).converged).toBe(true);
    const power = fitCurve(curves.powerLaw, { x: [0, 1, 2, 4, 8], y: [0.02, 0.9, 2.9, 7.9, 22.8] });
    expect(power.parameters.p.estimate).toBeCloseTo(1.5, 1);
    const falling = fitCurve(curves.powerLaw, { x: [1, 2, 4, 8], y: [-0.9, -2.9, -7.9, -22.8] });
    expect(falling.parameters.a.estimate).toBeLessThan(0);
  });
  it("hold drying back from starting below zero or growing", () => {
    const growing = fitCurve(curves.hendersonPabis, { x, y: x.map((v, i) => 1 + 0.02 * v + wobble[i]) });
    expect(growing.parameters.rate).toMatchObject({ estimate: 0, atBound: "lower" });
    const below = fitCurve(curves.hendersonPabis, { x, y: decay.map((value) => -value) });
    expect(below.parameters.start).toMatchObject({ estimate: 0, atBound: "lower" });
  });
});
