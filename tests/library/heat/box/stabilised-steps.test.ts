import { describe, expect, test } from "vitest";
import { stabilisedSteps, stepWorkspace } from "../../../../kernel-lib/library/src/heat/box/stabilised-steps";

/** Heat in a rod of 20 cells with both ends insulated: what it holds in all must stay. */
function rod(cells: number) {
  const y = Float64Array.from({ length: cells }, (_, cell) => Math.cos((Math.PI * (cell + 0.5)) / cells));
  const perS = cells * cells;
  return {
    y,
    errorScale: new Float64Array(cells).fill(1e-6),
    fastestDecay: () => 4 * perS,
    rates: (_t: number, state: Float64Array, into: Float64Array) => {
      into.fill(0);
      for (let cell = 0; cell + 1 < cells; cell++) {
        const flow = perS * (state[cell] - state[cell + 1]);
        into[cell] -= flow;
        into[cell + 1] += flow;
      }
    },
  };
}
/** Exact for the cells: the wave decays at 4n²·sin²(π/2n). */
const exact = (cells: number, t: number): number =>
  Math.cos(Math.PI / 2 / cells) * Math.exp(-4 * cells * cells * Math.sin(Math.PI / 2 / cells) ** 2 * t);
const going = { fromS: 0, toS: 0.1, firstStepS: 1e-4, accepted: () => false };

describe("stabilisedSteps", () => {
  test("meets the exact decay, with less than half the calls that Euler's method needs to be stable", () => {
    const system = rod(80);
    const outcome = stabilisedSteps(system, stepWorkspace(80), going);
    expect(Math.abs(system.y[0] / exact(80, 0.1) - 1)).toBeLessThan(1e-4);
    expect(outcome.t).toBe(0.1);
    expect(outcome.evaluations).toBeLessThan((0.1 * 4 * 80 * 80) / 2 / 2);
  });

  test("is of second order", () => {
    const error = [40, 80, 160].map((steps) => {
      const system = rod(20);
      stabilisedSteps(system, stepWorkspace(20), { ...going, fixedStepS: 0.1 / steps });
      return Math.abs(system.y[0] - exact(20, 0.1));
    });
    for (const ratio of [error[0] / error[1], error[1] / error[2]]) {
      expect(ratio).toBeGreaterThan(3.3);
      expect(ratio).toBeLessThan(4.7);
    }
  });

  test("conserves what the rates conserve, and stops when told", () => {
    const system = rod(20);
    let seen = 0;
    const outcome = stabilisedSteps(system, stepWorkspace(20), { ...going, accepted: () => ++seen === 5 });
    expect(outcome.steps).toBe(5);
    expect(outcome.t).toBeLessThan(0.1);
    expect(Math.abs(system.y.reduce((sum, value) => sum + value, 0))).toBeLessThan(1e-12);
  });

  test("rates that are not finite are not stepped over", () => {
    const system = { ...rod(5), rates: (_t: number, _y: Float64Array, into: Float64Array) => into.fill(Number.NaN) };
    expect(() => stabilisedSteps(system as never, stepWorkspace(5), going)).toThrow("the rates are not finite");
  });
});
