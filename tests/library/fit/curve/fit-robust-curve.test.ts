import { curves, fitCurve, fitRobustCurve } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);

describe("fitRobustCurve", () => {
  it("returns the plain fit when nothing is far out, and bisquare shuts out what is", () => {
    const spoiled = straight.map((value, i) => (i === 8 ? value + 30 : value));
    const robust = fitRobustCurve(curves.line, { x, y: spoiled }, { loss: "bisquare" });
    expect(robust.n).toBe(12);
    expect(robust.robustWeights[8]).toBe(0);
    const without = fitCurve(curves.line, { x: x.filter((_, i) => i !== 8), y: straight.filter((_, i) => i !== 8) });
    expect(Math.abs(robust.parameters.b.estimate - without.parameters.b.estimate)).toBeLessThan(0.01);
    expect(Math.abs(robust.plain.parameters.b.estimate - without.parameters.b.estimate)).toBeGreaterThan(0.3);
  });
});
