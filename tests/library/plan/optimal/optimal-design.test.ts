import fc from "fast-check";
import {
  type DesignModel,
  designQuality,
  fullFactorial,
  optimalDesign,
  polynomialTerms,
  termsModel,
} from "slabwright/plan";
import { describe, expect, it } from "vitest";

const factors = ["a", "b"];
const quadratic = termsModel({ factors, terms: polynomialTerms(factors) });
const grid = fullFactorial({ levels: [3, 3] });

describe("optimalDesign", () => {
  it("ends where no exchange of one run, tried afresh, betters the plan: D and I, with kept runs, over any region", () => {
    const lattice = fullFactorial({ levels: [5, 5] });
    // 14 points of the lattice never lie on one conic: they always carry the model
    const candidateLists = fc.shuffledSubarray([...lattice], { minLength: 14, maxLength: 25 });
    const kept = fc.shuffledSubarray([...lattice], { maxLength: 3 });
    fc.assert(
      fc.property(
        candidateLists,
        kept,
        fc.integer({ min: 6, max: 9 }),
        fc.constantFrom("D", "I"),
        (candidates, stay, runs, criterion) => {
          const made = optimalDesign({
            candidates,
            model: quadratic,
            runs,
            kept: stay,
            region: grid,
            criterion,
            starts: 2,
          });
          const scoreOf = (points: readonly (readonly number[])[]): number => {
            const quality = attempt(() =>
              designQuality({ points: [...stay, ...points], model: quadratic, region: grid }),
            );
            if (quality === null) return Number.NEGATIVE_INFINITY;
            return criterion === "D" ? quality.logDeterminant : -Math.log(quality.averageVariance);
          };
          const score = scoreOf(made.points);
          expect(made.points).toEqual(made.chosen.map((at) => candidates[at]));
          for (let run = 0; run < runs; run++)
            for (const other of candidates)
              expect(scoreOf(made.points.with(run, other))).toBeLessThanOrEqual(score + 1e-7);
        },
      ),
      { numRuns: 30 },
    );
  });

  it("does not care for the units of terms", () => {
    const scales = [1, 1e4, 1e-5, 0.1, 1e8, 1e-10];
    const scaled: DesignModel = {
      terms: quadratic.terms,
      row: (x) => quadratic.row(x).map((value, at) => value * scales[at]),
    };
    for (const criterion of ["D", "I"] as const) {
      const plain = optimalDesign({ candidates: grid, model: quadratic, runs: 8, criterion });
      const other = optimalDesign({ candidates: grid, model: scaled, runs: 8, criterion });
      expect(other.chosen).toEqual(plain.chosen);
      expect(other.quality.averageVariance).toBeCloseTo(plain.quality.averageVariance, 9);
    }
  });

  it("D and I each win at what they are for", () => {
    const candidates = fullFactorial({ levels: [11, 11] });
    const [d, i] = (["D", "I"] as const).map((criterion) =>
      optimalDesign({ candidates, model: quadratic, runs: 12, criterion }),
    );
    expect(d.quality.determinant).toBeGreaterThan(1.05 * i.quality.determinant);
    expect(i.quality.averageVariance).toBeLessThan(0.95 * d.quality.averageVariance);
  });

  it("keeps inside what is allowed, and chooses a point twice where that is best", () => {
    const candidates = fullFactorial({ levels: [9, 9] }).filter(([a, b]) => a + b <= 0.5);
    const { points } = optimalDesign({ candidates, model: quadratic, runs: 10 });
    expect(points.every(([a, b]) => a + b <= 0.5)).toBe(true);
    const line = termsModel({ factors: ["a"], terms: ["1", "a"] });
    expect(optimalDesign({ candidates: [[-1], [0], [1]], model: line, runs: 4 }).points).toEqual([
      [-1],
      [-1],
      [1],
      [1],
    ]);
  });

  it("adds to kept runs what they lack", () => {
    const kept = [
      [-1, -1],
      [1, -1],
      [-1, 1],
      [1, 1],
      [0, 0],
    ];
    const { points, quality } = optimalDesign({ candidates: grid, model: quadratic, runs: 1, kept });
    expect(quality.runs).toBe(6);
    expect(points[0].filter((code) => code === 0).length).toBe(1); // a face: corners and centre tell the squares' sum only
    // with enough kept, fewer runs than terms
    expect(optimalDesign({ candidates: grid, model: quadratic, runs: 2, kept: grid }).quality.runs).toBe(11);
    // what one level among the candidates cannot tell, kept runs may
    const wall = grid.filter(([a]) => a === 1);
    expect(
      optimalDesign({ candidates: wall, model: quadratic, runs: 3, kept: grid }).points.every(([a]) => a === 1),
    ).toBe(true);
  });

  it("repeats with its seed, says how many starts agree, and leaves what it was given alone", () => {
    const candidates = grid.map((point) => [...point]);
    const first = optimalDesign({ candidates, model: quadratic, runs: 9, seed: 5, starts: 7 });
    expect(optimalDesign({ candidates, model: quadratic, runs: 9, seed: 5, starts: 7 })).toEqual(first);
    expect(first.startsAgreeing).toBeGreaterThanOrEqual(1);
    expect(first.startsAgreeing).toBeLessThanOrEqual(7);
    expect(candidates.some((point) => Object.isFrozen(point))).toBe(false);
  });

  it("says of an impossible ask what to change", () => {
    const ask = (changes: object) => () => optimalDesign({ candidates: grid, model: quadratic, runs: 8, ...changes });
    expect(ask({ runs: 5 })).toThrow(
      "optimalDesign: runs must be at least 6 for the 6 terms: give more runs or leave terms out, got 5",
    );
    expect(
      ask({
        runs: 2,
        kept: [
          [0, 0],
          [1, 1],
        ],
      }),
    ).toThrow("must be at least 4 for the 6 terms, beside 2 kept");
    expect(ask({ runs: 2, kept: grid.map(() => [0, 0]) })).toThrow("kept runs repeat themselves: give more runs");
    expect(ask({ candidates: [] })).toThrow("candidates must hold at least one point: loosen what is allowed");
    expect(ask({ candidates: grid.filter(([a]) => a === 1) })).toThrow(
      'candidates must tell "a" from the terms before it: give candidates at more levels, or leave the term out',
    );
    expect(ask({ candidates: grid.filter(([a]) => a !== 0) })).toThrow('must tell "a^2" from the terms before it');
    const twice: DesignModel = { terms: ["1", "a", "again"], row: ([a]) => [1, a, 2 * a + 1] };
    expect(ask({ model: twice })).toThrow('must tell "again" from the terms before it');
    expect(ask({ model: { terms: ["1"], row: () => [Number.NaN] } })).toThrow(
      "a row of 1 finite numbers at every point",
    );
    expect(ask({ model: { terms: [], row: () => [] } })).toThrow("a model with at least one term");
    expect(ask({ criterion: "A" })).toThrow('criterion must be "D" or "I"');
    expect(ask({ region: [] })).toThrow("region must hold at least one point");
    expect(ask({ starts: 0 })).toThrow("starts must be a whole number from 1");
    expect(ask({ runs: 8.5 })).toThrow("runs must be a whole number >= 1");
  });
});

function attempt<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
