import { describe, expect, it } from "vitest";
import { loggedRange } from "../../../../kernel-lib/library/src/crisp/calibration/logged-range";
import { LOOSE_LOAD } from "../../../../kernel-lib/library/src/crisp/clocks/load-effect";
import { unmeasured } from "../sample-food";

describe("loggedRange", () => {
  it("reaches from the least to the greatest that was logged, no further and no less", () => {
    const range = loggedRange([
      { ...unmeasured, thicknessMm: 9, setpointC: 200, startC: -18, loadFraction: 0.5, sidesMm: [40, 10] },
      { ...unmeasured, thicknessMm: 6.5, setpointC: 185, startC: -12, loadFraction: 0.9, sidesMm: [30, 30] },
      { ...unmeasured, thicknessMm: 14, setpointC: 190, startC: -20, loadFraction: 0.7, turned: true },
    ]);
    expect(range).toEqual({
      thicknessMm: [6.5, 14],
      setpointC: [185, 200],
      startC: [-20, -12],
      loadFraction: [0.5, 0.9],
      sideMm: [20, 30],
      turned: true,
      unturned: true,
    });
  });
  it("counts a load that was not logged as a loose layer, and knows of no piece where none was cut", () => {
    const range = loggedRange([{ ...unmeasured, loadFraction: null, turned: true }])!;
    expect(range.loadFraction).toEqual([LOOSE_LOAD, LOOSE_LOAD]);
    expect(range.sideMm).toBeNull();
    expect([range.turned, range.unturned]).toEqual([true, false]);
    expect(loggedRange([])).toBeNull();
  });
});
