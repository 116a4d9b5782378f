import { curves, fitCurve, fitSlabTime, profileInterval } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const noise = [0.3, -0.5, 0.1, 0.6, -0.2, -0.4, 0.5, 0.1, -0.6, 0.2, -0.3, 0.2];
const straight = x.map((v, i) => 2 + 0.9 * v + noise[i]);
const fit = fitCurve(curves.line, { x, y: straight });

describe("profileInterval", () => {
  it("is the Wald interval for a straight line", () => {
    const { interval, closed } = profileInterval(curves.line, fit, "b");
    expect(interval[0]).toBeCloseTo(fit.parameters.b.interval95?.[0] ?? 0, 7);
    expect(interval[1]).toBeCloseTo(fit.parameters.b.interval95?.[1] ?? 0, 7);
    expect(closed).toEqual([true, true]);
  });
  it("gives a one-sided interval for a parameter at its bound", () => {
    const bent = fitCurve(curves.slabTime, { x, y: x.map((v, i) => 3 + 4 * Math.sqrt(v) + 0.3 * noise[i]) });
    expect(bent.parameters.b.atBound).toBe("lower");
    const { interval, closed } = profileInterval(curves.slabTime, bent, "b");
    expect(interval[0]).toBe(0);
    expect(interval[1]).toBeGreaterThan(0);
    expect(closed).toEqual([false, true]);
    const at = fitCurve(curves.slabTime, { x, y: bent.y }, { fixed: { b: interval[1] } });
    expect((at.rss - bent.rss) / bent.residualSd ** 2).toBeCloseTo(
      4.964602744 * (9 / 9) + (5.117355029 - 4.964602744),
      5,
    ); // qf(.95, 1, 9)
  });
  it("says where the data set no limit", () => {
    const early = [0.1, 0.2, 0.3, 0.4, 0.5];
    const rising = fitCurve(curves.hyperbola, { x: early, y: [1.01, 1.96, 2.93, 3.79, 4.72] });
    const { interval, closed, reading } = profileInterval(curves.hyperbola, rising, "top", 0.999);
    expect(interval[1]).toBe(Number.POSITIVE_INFINITY);
    expect(closed).toEqual([true, false]);
    expect(reading).toContain("the data set no limit above");
  });
  it("refuses an unknown or a fixed parameter", () => {
    expect(() => profileInterval(curves.line, fit, "c" as "a")).toThrow("parameter must be one of a, b");
    const held = fitCurve(curves.line, { x, y: straight }, { fixed: { a: 2 } });
    expect(() => profileInterval(curves.line, held, "a")).toThrow("must not be one that was fixed");
  });
});

describe("profileInterval of a slab time", () => {
  it("takes what fitSlabTime returns", () => {
    const thicknessMm = [6, 6, 9, 9, 12, 12, 16, 16];
    const slab = fitSlabTime({ thicknessMm, timeMin: [8.9, 9.3, 11.6, 11.2, 14.3, 14.7, 19.2, 18.7] });
    const { interval } = profileInterval(curves.slabTime, slab, "b");
    // linear in b, so Wald and profile agree below; above, the bound a >= 0 comes into play and the profile ends sooner
    const [low, high] = slab.parameters.b.interval95 ?? [0, 0];
    expect(interval[0]).toBeCloseTo(low, 6);
    expect(interval[1]).toBeLessThan(high);
    expect(() => profileInterval(curves.line, slab, "b")).toThrow(
      'profileInterval: fit must be a fit of line, got "slab time"',
    );
  });
});
