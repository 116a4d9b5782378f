import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chanceOfEvidence,
  type EvidenceNeeds,
  isComplete,
  needsAfter,
  servedBy,
} from "../../../../kernel-lib/library/src/advice/value/evidence-needs";
import type { TrialReadings } from "../../../../kernel-lib/library/src/crisp/foresight/trial-readings";

const none: EvidenceNeeds = {
  trials: 0,
  climbing: 0,
  done: 0,
  oneThicknessMm: null,
  soft: false,
  crisp: false,
  outside: false,
};

function trial(thicknessMm: number, climbing: number, done: number): Parameters<typeof servedBy>[1] {
  const readings = { chance: { climbing, done, soft: 0, crisp: 0 } } as unknown as TrialReadings;
  return { thicknessMm, readings, reaches: thicknessMm === 11 };
}

const chance = fc.double({ min: 0, max: 1, noNaN: true });

describe("chanceOfEvidence", () => {
  it("is the chance that enough of the trials bring each kind of core: by counting all their outcomes", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(chance, chance), { minLength: 1, maxLength: 5 }),
        fc.nat(3),
        fc.nat(3),
        (trials, climbing, done) => {
          const all = (which: 0 | 1, wanted: number): number => {
            let sum = 0;
            for (let outcome = 0; outcome < 2 ** trials.length; outcome++) {
              const hits = trials.map((_, at) => (outcome >> at) & 1);
              if (hits.reduce((count, hit) => count + hit, 0) < wanted) continue;
              sum += trials.reduce((of, one, at) => of * (hits[at] === 1 ? one[which] : 1 - one[which]), 1);
            }
            return sum;
          };
          const needs = { ...none, climbing, done };
          const found = chanceOfEvidence(
            needs,
            trials.map(([a, b]) => trial(10, a, b)),
          );
          expect(found).toBeCloseTo(all(0, climbing) * all(1, done), 9);
        },
      ),
    );
  });

  it("is 0 with too few trials, or one thickness where a second is asked for", () => {
    expect(chanceOfEvidence({ ...none, trials: 2 }, [trial(10, 1, 1)])).toBe(0);
    const one = { ...none, oneThicknessMm: [10, 10.5] as const };
    expect(chanceOfEvidence(one, [trial(11, 1, 1)])).toBe(0);
    expect(chanceOfEvidence(one, [trial(12, 1, 1)])).toBe(1);
    expect(chanceOfEvidence(one, [trial(9, 1, 1)])).toBe(1);
  });
});

describe("needsAfter", () => {
  it("knows two thicknesses once two slabs are planned, and is complete once all is brought", () => {
    const fresh: EvidenceNeeds = { ...none, trials: 6, climbing: 3, done: 3 };
    const one = needsAfter(fresh, [trial(10, 1, 0)]);
    expect(one).toEqual({ ...none, trials: 5, climbing: 2, done: 3, oneThicknessMm: [10, 10] });
    expect(servedBy(one, trial(12, 0, 0.5))).toBe(1.5);
    const six = needsAfter(
      one,
      [12, 12, 10, 10, 12].map((mm, at) => trial(mm, at < 2 ? 1 : 0, at < 2 ? 0 : 1)),
    );
    expect(isComplete(six)).toBe(true);
    const far = { ...none, outside: true };
    expect([isComplete(far), servedBy(far, trial(10, 0, 0)), servedBy(far, trial(11, 0, 0))]).toEqual([false, 0, 1]);
    expect(isComplete(needsAfter(far, [trial(11, 0, 0)]))).toBe(true);
  });
});
