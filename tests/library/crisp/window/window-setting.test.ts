import { describe, expect, it } from "vitest";
import { LOOSE_LOAD } from "../../../../kernel-lib/library/src/crisp/clocks/load-effect";
import { settle } from "../../../../kernel-lib/library/src/crisp/window/window-setting";

describe("settle", () => {
  const least = { thicknessMm: 9, applianceId: "basket", setpointC: 200 };

  it("fills in what is usual, and counts what is undefined as left out", () => {
    const settled = settle(least, "here");
    expect(settled).toMatchObject({ loadFraction: LOOSE_LOAD, tooBrownScore: 7, tooDryPercent: 25, longestMin: 30 });
    expect(settle({ ...least, loadFraction: undefined, tooBrownScore: undefined, limit: undefined }, "here")).toEqual(
      settled,
    );
  });

  it("keeps what is given", () => {
    expect(settle({ ...least, loadFraction: 0.9, sidesMm: [40, 30] }, "here")).toMatchObject({
      loadFraction: 0.9,
      sidesMm: [40, 30],
    });
  });

  it("refuses what cannot be, naming who asked", () => {
    expect(() => settle({ ...least, setpointC: 400 }, "here")).toThrow(
      "here: setpointC must be between 130 and 290 °C",
    );
  });
});
