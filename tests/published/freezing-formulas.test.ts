import { describe, expect, test } from "vitest";
import { equivalentDimension } from "../../kernel-lib/library/src/heat/formulas/equivalent-dimension";
import { freezingTimeClelandEarle } from "../../kernel-lib/library/src/heat/formulas/freezing-time-cleland-earle";
import { freezingTimePham } from "../../kernel-lib/library/src/heat/formulas/freezing-time-pham";
import { freezingTimePlank, plankConstants } from "../../kernel-lib/library/src/heat/formulas/freezing-time-plank";
import { foods } from "../library/heat/foods";
import { comparison } from "./comparison";
import reference from "./freezing-formulas/reference.json";

const formula = comparison({
  page: "heating-and-freezing",
  what: "freezing times and shape factors after Plank, Cleland & Earle, and Pham",
  against: "the formulas, evaluated apart",
  source:
    "Plank R. (1913); Cleland A.C., Earle R.L. (1984), Journal of Food Science 49:1034-1042; Pham Q.T. (1986), International Journal of Refrigeration 9:209-213; Cleland D.J. et al. (1987), International Journal of Refrigeration 10:22",
});
const pham = comparison({
  page: "heating-and-freezing",
  what: "freezing time of slabs by `freezingTimePham`",
  against: "the enthalpy solution on 200 cells, computed apart from the library",
  source: "Pham Q.T. (1986), International Journal of Refrigeration 9:209-213",
});

describe("freezing times of slabs", () => {
  for (const { thicknessMm, coefficientWm2K, ...certified } of reference.slabs) {
    const slab = { food: foods.reference, thicknessMm, coefficientWm2K, airC: -18, startC: 5 };
    test(`${thicknessMm} mm, ${coefficientWm2K} W/(m²·K)`, () => {
      const plank = freezingTimePlank({
        thicknessMm,
        coefficientWm2K,
        airC: -18,
        freezingPointC: -1,
        densityKgM3: 1050,
        latentKJkg: 212.55552,
        frozenConductivityWmK: 1.399,
      });
      formula.relative(plank * 60, certified.plankS, 1e-9);
      formula.relative(freezingTimeClelandEarle(slab).timeMin * 60, certified.clelandEarleS, 1e-9);
      formula.relative(freezingTimePham(slab).timeMin * 60, certified.phamS, 1e-9);
    });

    test(`Pham is within 2.5 % of the enthalpy solution (${thicknessMm} mm, ${coefficientWm2K})`, () => {
      pham.relative(freezingTimePham(slab).timeMin * 60, certified.fineGridS, 0.025);
    });
  }

  test("Plank's textbook case", () => {
    const minutes = freezingTimePlank({
      thicknessMm: 60,
      densityKgM3: 1050,
      latentKJkg: 250,
      freezingPointC: -1.75,
      airC: -30,
      coefficientWm2K: 30,
      frozenConductivityWmK: 1.108,
    });
    formula.relative(minutes * 60, reference.plankTextbookS, 1e-9);
  });
});

describe("shapes", () => {
  for (const { ratios, p, r } of reference.plankBricks)
    test(`Plank's brick ${ratios}`, () => {
      const found = plankConstants("brick", ratios as [number, number]);
      formula.relative(found.p, p, 1e-9);
      formula.relative(found.r, r, 1e-9);
    });

  test("Plank's brick ends at the cube (1/6, 1/24) and at the slab (1/2, 1/8)", () => {
    expect(plankConstants("brick", [1, 1])).toEqual({ p: 1 / 6, r: 1 / 24 });
    expect(plankConstants("brick", [1.0001, 1.0002]).r).toBeCloseTo(0.041674994770459495, 10);
    const plate = plankConstants("brick", [1000, 1001]);
    expect(plate.p).toBeCloseTo(0.499, 4);
    expect(plate.r).toBeCloseTo(0.12483, 4);
  });

  for (const method of ["pham", "cleland"] as const)
    for (const { biot, ratios, e } of method === "pham" ? reference.equivalentPham : reference.equivalentCleland)
      test(`${method}: Bi ${biot}, sides ${ratios}`, () => {
        const found = equivalentDimension({ biot, sideRatios: ratios as [number, number], method });
        formula.relative(found, e, 1e-9);
      });

  test("with hardly any inner resistance a piece freezes by its surface: E = 1 + 1/β1 + 1/β2", () => {
    for (const method of ["pham", "cleland"] as const) {
      expect(equivalentDimension({ biot: 1e-7, sideRatios: [2, 3], method })).toBeCloseTo(1.8333, 3);
      expect(equivalentDimension({ biot: 1e-7, sideRatios: [1, 1], method })).toBeCloseTo(3, 3);
    }
  });
});
