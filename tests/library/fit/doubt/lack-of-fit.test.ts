import { curves, fitCurve, lackOfFit, serialPattern } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);
const fit = fitCurve(curves.line, { x, y: straight });

describe("lackOfFit and serialPattern", () => {
  it("need replicates, and a spare x", () => {
    expect(() => lackOfFit(fit)).toThrow("repeat a trial at the same x");
    const two = fitCurve(curves.line, { x: [1, 1, 2, 2], y: [1, 1.2, 2.2, 2] });
    expect(() => lackOfFit(two)).toThrow("log trials at another x");
  });
  it("see a bend that a straight line misses", () => {
    const bent = fitCurve(curves.line, {
      x: [...x, ...x],
      y: [...x, ...x].map((v, i) => 0.1 * v * v + 0.2 * noise[(i * 5 + (i > 11 ? 3 : 0)) % 12]),
    });
    expect(lackOfFit(bent).reading).toContain("try another form");
    const once = fitCurve(curves.line, { x, y: x.map((v) => 0.1 * v * v) });
    expect(serialPattern(once).reading).toContain("neighbours are alike");
    expect(serialPattern(once).durbinWatson).toBeLessThan(1);
  });
  it("take an order of their own", () => {
    const reversed = x.map((v) => -v);
    expect(serialPattern(fit, reversed).durbinWatson).toBeCloseTo(serialPattern(fit).durbinWatson, 12);
    expect(() => serialPattern(fit, [1, 2])).toThrow("one number for each of the 12 points");
  });
});
