import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { edgeSpeed, surfaceShare, UNCUT } from "../../../../kernel-lib/library/src/crisp/clocks/edge-speed";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const square = (mm: number) => ({ lengthMm: mm, widthMm: mm });

describe("edgeSpeed", () => {
  it("is 1 for a slab, for a strip the gain of one pair of sides, and for a piece the sum of both", () => {
    for (const frozen of [true, false]) {
      const of = (lengthMm: number, widthMm: number) => edgeSpeed({ lengthMm, widthMm }, 10, 0.5, 0.8, frozen);
      const never = Number.POSITIVE_INFINITY;
      expect(edgeSpeed(UNCUT, 10, 0.5, 0.8, frozen)).toBe(1);
      expect(of(never, 30)).toBe(of(30, never));
      expect(of(30, 20) - 1).toBeCloseTo(of(30, never) - 1 + (of(never, 20) - 1), 12);
      expect(of(1e6, 1e6)).toBeCloseTo(1, 12);
    }
  });

  it("grows as a side gets shorter or its air stronger, and stays above the slab's", () => {
    fc.assert(
      fc.property(
        between(12, 80),
        between(6, 20),
        between(0.12, 1.43),
        between(0.3, 1),
        fc.boolean(),
        (mm, thicknessMm, biot, share, frozen) => {
          const own = edgeSpeed(square(mm), thicknessMm, biot, share, frozen);
          expect(own).toBeGreaterThanOrEqual(1);
          expect(own).toBeGreaterThanOrEqual(edgeSpeed(square(1.1 * mm), thicknessMm, biot, share, frozen));
          expect(edgeSpeed(square(mm), thicknessMm, biot, 1.1 * share, frozen)).toBeGreaterThanOrEqual(own);
        },
      ),
    );
  });

  it("holds Bi, the side and the share of the sides to what it was fitted to", () => {
    const at = (biot: number, mm = 25, share = 0.8) => edgeSpeed(square(mm), 10, biot, share, true);
    expect(at(0.01)).toBe(at(0.1));
    expect(at(0.11)).not.toBe(at(0.1));
    expect(at(9)).toBe(at(2));
    expect(at(1.9)).not.toBe(at(2));
    expect(at(0.5, 3)).toBe(at(0.5, 5));
    expect(at(0.5, 5.1)).not.toBe(at(0.5, 5));
    expect(at(0.5, 25, 0)).toBe(at(0.5, 25, 0.05));
    expect(at(0.5, 25, 0.06)).not.toBe(at(0.5, 25, 0.05));
  });

  it("is that of a cube at Bi 1, e^a₀·σ^w twice, where all other terms vanish", () => {
    expect(edgeSpeed(square(10), 10, 1, 1, true)).toBeCloseTo(1 + 2 * Math.exp(-0.3807), 12);
    expect(edgeSpeed(square(10), 10, 1, 0.6, false)).toBeCloseTo(1 + 2 * Math.exp(-0.5087) * 0.6 ** 0.5529, 12);
  });
});

describe("surfaceShare", () => {
  it("is the surface over that of the two faces, by hand", () => {
    // faces 2·40·20, sides 2·10·(40 + 20), these counted at 0.8
    expect(surfaceShare({ lengthMm: 40, widthMm: 20 }, 10, 0.8)).toBeCloseTo((1600 + 0.8 * 1200) / 1600, 12);
    expect(surfaceShare(UNCUT, 10, 0.8)).toBe(1);
  });
});
