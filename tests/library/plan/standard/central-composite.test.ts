import fc from "fast-check";
import { centralComposite, type DesignModel, polynomialTerms, termsModel } from "slabwright/plan";
import { describe, expect, it } from "vitest";
import { factorOf, momentsOf, rowsOf } from "../../../../kernel-lib/library/src/plan/optimal/design-model";
import { variancesAt } from "../../../../kernel-lib/library/src/plan/optimal/design-quality";
import { inverseFrom } from "../../../../kernel-lib/library/src/statistics/linear-algebra/cholesky";

const quadratic = (factors: number): DesignModel => {
  const names = [..."abcdefgh"].slice(0, factors);
  return termsModel({ factors: names, terms: polynomialTerms(names) });
};

/** xᵀ(XᵀX)⁻¹x at points. */
function variances(
  points: readonly (readonly number[])[],
  at: readonly (readonly number[])[],
  factors: number,
): number[] {
  const model = quadratic(factors);
  const size = model.terms.length;
  const lower = factorOf(momentsOf(rowsOf("test", model, points), size), size)!;
  return [...variancesAt(inverseFrom(lower, size), rowsOf("test", model, at), size)];
}

describe("centralComposite", () => {
  it("rotatable: the doubt is the same in all directions; face-centred: it is not", () => {
    const direction = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 });
    const round = centralComposite({ factors: 3 }).points;
    fc.assert(
      fc.property(
        direction.filter((one) => Math.hypot(...one) > 0.1),
        (one) => {
          const unit = one.map((value) => value / Math.hypot(...one));
          const [here, along] = variances(round, [unit, [1, 0, 0]], 3);
          expect(here).toBeCloseTo(along, 10);
        },
      ),
    );
    const diagonal = [1, 1, 1].map((value) => value / Math.sqrt(3));
    const [here, along] = variances(centralComposite({ factors: 3, alpha: "face" }).points, [diagonal, [1, 0, 0]], 3);
    expect(Math.abs(here - along)).toBeGreaterThan(0.01);
  });

  it("in blocks: every regressor has the same mean in both, so that blocks touch the mean alone", () => {
    const counts = fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 6 }));
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 6 }), counts, (factors, centres) => {
        const { points, blocks } = centralComposite({ factors, alpha: "blocks", centres });
        const { row, terms } = quadratic(factors);
        for (let term = 0; term < terms.length; term++) {
          const [one, other] = [1, 2].map((block) => {
            const own = points.filter((_, at) => blocks[at] === block);
            return own.reduce((sum, point) => sum + row(point)[term], 0) / own.length;
          });
          expect(one).toBeCloseTo(other, 10);
        }
      }),
    );
  });

  it("inscribed: no run leaves -1 to 1, and the shape stays", () => {
    const whole = centralComposite({ factors: 4 });
    const inside = centralComposite({ factors: 4, inscribed: true });
    expect(inside.points.flat().reduce((most, code) => Math.max(most, Math.abs(code)), 0)).toBe(1);
    expect(inside.points.map((point) => point.map((code) => code * whole.alpha))).toEqual(whole.points);
    expect(centralComposite({ factors: 2, alpha: 0.5, inscribed: true }).points[0]).toEqual([-1, -1]);
  });

  it("refuses what gives no quadratic", () => {
    expect(() => centralComposite({ factors: 1 })).toThrow("factors must be a whole number from 2 to 8");
    expect(() => centralComposite({ factors: 3, generators: ["C=AB"] })).toThrow("must give resolution 5 or more");
    expect(() => centralComposite({ factors: 3, centres: [-1, 0] })).toThrow("centres must be two whole numbers");
    expect(() => centralComposite({ factors: 3, alpha: 0 })).toThrow("alpha must be > 0");
    expect(() => centralComposite({ factors: 3, alpha: "round" as never })).toThrow(
      '"rotatable", "face", "blocks" or a number',
    );
  });
});
