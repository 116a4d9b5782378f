import fc from "fast-check";
import { fullFactorial, runOrder } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const points = fullFactorial({ levels: [2, 2, 2] });

describe("runOrder", () => {
  it("makes every point as often as asked, block after block, numbered in turn", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 0, max: 3 }),
        fc.nat(99),
        (replicates, centres, seed) => {
          const blocks = points.map((_, at) => 1 + (at % 2));
          const runs = runOrder({ points, blocks, replicates, centres, seed });
          expect(runs.length).toBe(8 * replicates + 2 * centres);
          expect(runs.map(({ run }) => run)).toEqual(runs.map((_, at) => at + 1));
          expect(runs.map(({ block }) => block)).toEqual(runs.map(({ block }) => block).toSorted((a, b) => a - b));
          for (const [at, point] of points.entries()) {
            const own = runs.filter(({ listed }) => listed === at + 1);
            expect(own.map((one) => one.replicate).toSorted()).toEqual(
              Array.from({ length: replicates }, (_, r) => r + 1),
            );
            for (const one of own) expect([one.point, one.block]).toEqual([point, blocks[at]]);
          }
          const added = runs.filter(({ listed }) => listed === null);
          expect(added.every(({ point }) => point.every((code) => code === 0))).toBe(true);
          for (const block of [1, 2]) expect(added.filter((one) => one.block === block).length).toBe(centres);
        },
      ),
    );
  });

  it("repeats with its seed; over seeds every point comes first about as often", () => {
    expect(runOrder({ points, seed: 3 })).toEqual(runOrder({ points, seed: 3 }));
    const first = points.map(() => 0);
    for (let seed = 0; seed < 4000; seed++) first[runOrder({ points, seed })[0].listed! - 1]++;
    // 500 expected of each, standard deviation 21: within five of them
    for (const count of first) expect(Math.abs(count - 500)).toBeLessThan(105);
  });

  it("gives replicates blocks of their own when asked", () => {
    const runs = runOrder({ points, replicates: 3, blockPerReplicate: true });
    for (const { block, replicate } of runs) expect(block).toBe(replicate);
    expect(new Set(runs.map(({ block }) => block))).toEqual(new Set([1, 2, 3]));
  });

  it("refuses what is no plan", () => {
    expect(() => runOrder({ points: [] })).toThrow("points must hold at least one point");
    expect(() => runOrder({ points: [[1], [1, 1]] })).toThrow("must all have 1 numbers");
    expect(() => runOrder({ points, blocks: [1] })).toThrow("one number for each of the 8 points");
    expect(() => runOrder({ points, blocks: points.map(() => 0) })).toThrow("blocks must be whole numbers from 1");
    expect(() => runOrder({ points, replicates: 0 })).toThrow("replicates must be a whole number from 1");
    expect(() => runOrder({ points, centres: -1 })).toThrow("centres must be a whole number from 0");
  });
});
