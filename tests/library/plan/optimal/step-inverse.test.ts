import fc from "fast-check";
import { expect, it } from "vitest";
import { momentsOf } from "../../../../kernel-lib/library/src/plan/optimal/design-model";
import { variancesAt } from "../../../../kernel-lib/library/src/plan/optimal/design-quality";
import { stepInverse } from "../../../../kernel-lib/library/src/plan/optimal/step-inverse";
import { choleskyFactor, inverseFrom } from "../../../../kernel-lib/library/src/statistics/linear-algebra/cholesky";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

it("stepInverse: the inverse, and every row's own, as if worked out afresh with the row added or without it", () => {
  fc.assert(
    fc.property(fc.nat(9999), fc.integer({ min: 1, max: 6 }), fc.nat(11), (seed, size, at) => {
      const random = seededRandom(seed);
      const rows = Float64Array.from({ length: 12 * size }, () => random.normal());
      const row = rows.slice(at * size, (at + 1) * size);
      const without = momentsOf(rows, size).map((sum, place) => sum + (place % (size + 1) === 0 ? 1 : 0));
      const once = momentsOf(row, size).map((sum, place) => sum + without[place]);
      const inverseOf = (moments: Float64Array): Float64Array => inverseFrom(choleskyFactor(moments, size), size);
      for (const [from, to, sign] of [
        [without, once, 1],
        [once, without, -1],
      ] as const) {
        const inverse = inverseOf(from);
        const own = variancesAt(inverse, rows, size);
        stepInverse(inverse, own, rows, at, sign);
        const afresh = inverseOf(to);
        for (const [place, value] of inverse.entries()) expect(value).toBeCloseTo(afresh[place], 10);
        for (const [place, value] of variancesAt(afresh, rows, size).entries())
          expect(own[place]).toBeCloseTo(value, 10);
      }
    }),
  );
});
