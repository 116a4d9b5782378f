import { describe, expect, test } from "vitest";
import { freezingFront } from "../../../../kernel-lib/library/src/heat/formulas/freezing-front";

describe("freezingFront", () => {
  test("a face that is not cold is refused", () => {
    expect(() =>
      freezingFront({
        frozenConductivityWmK: 1.5,
        frozenSpecificHeatKJkgK: 2,
        thawedConductivityWmK: 0.5,
        thawedSpecificHeatKJkgK: 3.5,
        densityKgM3: 1050,
        latentKJkg: 230,
        faceC: 1,
        freezingPointC: -1,
        startC: 5,
      }),
    ).toThrow("faceC must be below");
  });
});
