import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isWithinClocks, withinClocks } from "../../../../kernel-lib/library/src/advice/trial/within-clocks";
import { settle } from "../../../../kernel-lib/library/src/crisp/window/window-setting";

const any = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe("withinClocks", () => {
  it("gives what the clocks take, the same where they take it as it is", () => {
    fc.assert(
      fc.property(
        any(0.1, 400),
        any(0.5, 3000),
        any(0.5, 3000),
        any(100, 290),
        (thicknessMm, long, wide, setpointC) => {
          const asked = { thicknessMm, sidesMm: [long, wide] as const, setpointC };
          const { piece, ...rest } = withinClocks(asked);
          const sidesMm = [piece.lengthMm, piece.widthMm] as const;
          expect(() => settle({ ...rest, sidesMm, applianceId: "basket" }, "test")).not.toThrow();
          expect(isWithinClocks({ ...rest, sidesMm })).toBe(true);
          expect(isWithinClocks(asked)).toBe(
            rest.thicknessMm === thicknessMm &&
              rest.setpointC === setpointC &&
              sidesMm[0] === long &&
              sidesMm[1] === wide,
          );
        },
      ),
    );
  });
});
