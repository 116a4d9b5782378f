import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { thicknessBand } from "../../../../kernel-lib/library/src/trials/questions/thickness-band";

describe("thicknessBand", () => {
  it("holds the thickness, to the hundredth that its ends are told in", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.constantFrom(0.5, 1, 2, 3.175),
        (thicknessMm, bandMm) => {
          const [from, to] = thicknessBand(thicknessMm, bandMm);
          expect(from - 0.005).toBeLessThanOrEqual(thicknessMm);
          expect(to + 0.005).toBeGreaterThan(thicknessMm);
          expect(to - from).toBeCloseTo(bandMm, 1);
        },
      ),
    );
  });

  it("counts its lower end in", () => {
    expect(thicknessBand(8, 2)).toEqual([8, 10]);
  });
});
