import { noncentralFCdf, noncentralTCdf, studentTCdf } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

// R 4.2.2: pt(2, 10, 1), pt(-1, 5, 2), pt(3, 4.5, 6)
const REFERENCE = {
  pt2: 0.807611562530311,
  ptNegative: 0.00231637565416343,
  ptFar: 0.0142132838426663,
  pf: 0.5489678908785349, // scipy 1.17.1 ncf.cdf: R's own series stops at an error of 1e-9
  pfFar: 0.4067733710965896, // scipy 1.17.1
};

describe("noncentral distributions", () => {
  it("agree with R 4.2.2 (t) and scipy (F), to 10 decimals", () => {
    expect(noncentralTCdf(2, 10, 1)).toBeCloseTo(REFERENCE.pt2, 10);
    expect(noncentralTCdf(-1, 5, 2)).toBeCloseTo(REFERENCE.ptNegative, 9);
    expect(noncentralTCdf(3, 4.5, 6)).toBeCloseTo(REFERENCE.ptFar, 10);
    expect(noncentralFCdf(3, 2, 10, 4)).toBeCloseTo(REFERENCE.pf, 10);
    expect(noncentralFCdf(10, 3, 7.5, 30)).toBeCloseTo(REFERENCE.pfFar, 10);
  });
  it("are the central ones at noncentrality 0", () => {
    expect(noncentralTCdf(1.3, 6, 0)).toBeCloseTo(studentTCdf(1.3, 6), 12);
  });
});
