import { describe, expect, test } from "vitest";
import {
  freezingTimePlank,
  plankConstants,
} from "../../../../kernel-lib/library/src/heat/formulas/freezing-time-plank";

describe("freezingTimePlank", () => {
  test("a sphere freezes in a third of the slab's time where the surface decides", () => {
    const base = {
      densityKgM3: 1050,
      latentKJkg: 210,
      freezingPointC: -1,
      airC: -20,
      coefficientWm2K: 0.01,
      frozenConductivityWmK: 1.4,
      thicknessMm: 20,
    };
    expect(freezingTimePlank({ ...base, shape: "sphere" }) / freezingTimePlank(base)).toBeCloseTo(1 / 3, 4);
    expect(freezingTimePlank({ ...base, shape: "cylinder" }) / freezingTimePlank(base)).toBeCloseTo(1 / 2, 4);
    // and in as many parts of it where the inside does
    const inside = { ...base, coefficientWm2K: 1e9 };
    expect(freezingTimePlank({ ...inside, shape: "sphere" }) / freezingTimePlank(inside)).toBeCloseTo(1 / 3, 4);
    expect(freezingTimePlank({ ...inside, shape: "cylinder" }) / freezingTimePlank(inside)).toBeCloseTo(1 / 2, 4);
  });

  test("bare bricks and warm air are refused", () => {
    const base = {
      densityKgM3: 1050,
      latentKJkg: 210,
      freezingPointC: -1,
      airC: -20,
      coefficientWm2K: 9,
      frozenConductivityWmK: 1.4,
      thicknessMm: 20,
    };
    expect(() => freezingTimePlank({ ...base, shape: "brick" })).toThrow("must be given for a brick");
    expect(() => freezingTimePlank({ ...base, airC: 2 })).toThrow("must be below the freezing point of -1 °C, got 2");
    expect(() => freezingTimePlank({ ...base, airC: -1 })).toThrow("must be below the freezing point of -1 °C, got -1");
    expect(() => freezingTimePlank({ ...base, shape: "brick", sideRatios: [0.5, 2] })).toThrow(
      "sideRatios[0] must be between 1",
    );
    expect(() => plankConstants("egg" as "sphere")).toThrow('shape must be slab, cylinder, sphere or brick, got "egg"');
  });
});
