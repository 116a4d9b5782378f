import fc from "fast-check";
import { expect, it } from "vitest";
import { exchangeRuns } from "../../../../kernel-lib/library/src/plan/optimal/exchange-runs";
import { startRuns } from "../../../../kernel-lib/library/src/plan/optimal/start-runs";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

it("startRuns: drawing none, finds a plan that tells all terms apart with as many runs as terms", () => {
  fc.assert(
    fc.property(fc.nat(9999), fc.integer({ min: 2, max: 8 }), (seed, size) => {
      const random = seededRandom(seed);
      const rows = Float64Array.from({ length: 40 * size }, () => random.normal());
      const problem = { rows, size, kept: new Float64Array(size * size), weight: null };
      const start = startRuns(problem, size, 0, random);
      expect(new Set(start).size).toBe(size);
      expect(exchangeRuns(problem, start)).not.toBeNull();
    }),
  );
});
