import fc from "fast-check";
import { bestCompromise, desirability, fitSurface, type Goal, overallDesirability, surfaceAt } from "slabwright/fit";
import { centralComposite } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const factors = ["air", "time"];
const { points } = centralComposite({ factors: 2, alpha: "face" });
const surface = (of: (a: number, t: number) => number) =>
  fitSurface({ factors, points, y: points.map(([a, t], at) => of(a, t) + 0.05 * Math.cos(5 * at)) });
const crisp = surface((a, t) => 6 + a + 1.5 * t - 0.5 * t * t);
const loss = surface((a, t) => 8 + a + 2 * t + 0.5 * t * t);
const wanted = [
  { name: "crispness", fit: crisp, goal: { wanted: "more", low: 5, target: 8 } },
  { name: "loss", fit: loss, goal: { wanted: "less", target: 6, high: 12 } },
] as const;

describe("desirability", () => {
  it("runs from 0 to 1, and rises with what is wanted", () => {
    const goal: Goal = { wanted: "target", low: 2, target: 5, high: 6, weight: 2 };
    expect([1, 2, 3.5, 5, 5.5, 6, 9].map((value) => desirability(value, goal))).toEqual([0, 0, 0.25, 1, 0.25, 0, 0]);
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (y, more) => {
          const rising: Goal = { wanted: "more", low: -3, target: 4, weight: 0.7 };
          expect(desirability(y + more, rising)).toBeGreaterThanOrEqual(desirability(y, rising));
          expect(desirability(-y, { wanted: "less", target: -4, high: 3, weight: 0.7 })).toBeCloseTo(
            desirability(y, rising),
            12,
          );
        },
      ),
    );
  });

  it("takes goals together by importance, and nothing makes up for one that is not met", () => {
    const goal: Goal = { wanted: "more", low: 0, target: 1 };
    expect(overallDesirability([0.25, 1], [goal, goal])).toBeCloseTo(0.5, 12);
    expect(overallDesirability([0.25, 1], [{ ...goal, importance: 3 }, goal])).toBeCloseTo(0.25 ** 0.75, 12);
    expect(overallDesirability([0, 1], [goal, goal])).toBe(0);
    expect(() => desirability(1, { wanted: "more", low: 3, target: 3 })).toThrow("that rise");
  });
});

describe("bestCompromise", () => {
  it("is as good as any point of a fine grid", () => {
    const best = bestCompromise({ wanted });
    let most = 0;
    for (let a = -1; a <= 1; a += 0.02)
      for (let t = -1; t <= 1; t += 0.02) {
        const met = wanted.map(({ fit, goal }) => desirability(surfaceAt(fit, [a, t]).value, goal));
        most = Math.max(
          most,
          overallDesirability(
            met,
            wanted.map(({ goal }) => goal),
          ),
        );
      }
    expect(best.overall).toBeGreaterThanOrEqual(most - 1e-9);
    expect(best.overall).toBeLessThan(most + 0.01);
    expect(best.overall95[0]).toBeLessThan(best.overall);
    expect(best.overall95[1]).toBeGreaterThan(best.overall);
  });

  it("never leaves what is allowed, however much better the rest is", () => {
    const free = bestCompromise({ wanted });
    const allowed = ([a, t]: readonly number[]): boolean => Math.hypot(a - free.point[0], t - free.point[1]) >= 0.5;
    const safe = bestCompromise({ wanted, allowed });
    expect(allowed(safe.point)).toBe(true);
    expect(allowed(free.point)).toBe(false);
    expect(safe.overall).toBeLessThan(free.overall);
  });

  it("gives the same answer for the same seed", () => {
    expect(bestCompromise({ wanted, draws: 50 })).toEqual(bestCompromise({ wanted, draws: 50 }));
  });

  it("names the goal that no point meets, and a region without an allowed point", () => {
    const never = { name: "crispness", fit: crisp, goal: { wanted: "more", low: 20, target: 30 } } as const;
    expect(() => bestCompromise({ wanted: [never, wanted[1]] })).toThrow(
      "must have a goal for crispness that some point meets: move its low, target or high",
    );
    expect(() => bestCompromise({ wanted, allowed: () => false })).toThrow("must leave some point of the region");
  });
});
