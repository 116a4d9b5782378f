// Source: see uncertainty/reference.json (JCGM 100:2008, JCGM 101:2008).
import { describe, expect, it } from "vitest";
import { studentTQuantile } from "../../kernel-lib/library/src/statistics/distributions/student-t-distribution";
import { monteCarlo } from "../../kernel-lib/library/src/statistics/random/monte-carlo";
import { seededRandom } from "../../kernel-lib/library/src/statistics/random/seeded-random";
import { propagateUncertainty } from "../../kernel-lib/library/src/statistics/uncertainty/propagate-uncertainty";
import { rectangularInput } from "../../kernel-lib/library/src/statistics/uncertainty/uncertain-input";
import { comparison } from "./comparison";
import reference from "./uncertainty/reference.json";

const gum = (what: string, against: string, source: string) =>
  comparison({ page: "calibration-and-doubt", what, against, source });
const GUM = "JCGM 100:2008 (GUM), annexes G.4 and H.1";
const law = gum(
  "standard uncertainty by `propagateUncertainty`, free and correlated",
  "the formulas worked out apart",
  GUM,
);
const welch = gum("degrees of freedom and coverage factor", "the Welch-Satterthwaite formula worked out apart", GUM);
const rectangles = gum(
  "uncertainty and 95 % interval of four rectangles by `monteCarlo`",
  "the exact interval and the printed one",
  "JCGM 101:2008, clause 9.2.3",
);
const gauge = gum(
  "mean, uncertainty and 99 % interval of the gauge block",
  "the printed result",
  "JCGM 101:2008, clause 9.5",
);

describe("the law of propagation of uncertainty", () => {
  const inputs = {
    before: rectangularInput(reference.yield.m1, 0.1),
    after: rectangularInput(reference.yield.m2, 0.1),
  };
  const measure = (m: { before: number; after: number }): number => m.after / m.before;

  it("gives the uncertainty of a yield, independent and correlated", () => {
    expect(inputs.before.standardUncertainty).toBeCloseTo(reference.yield.u, 12);
    const free = propagateUncertainty({ inputs, measure });
    expect(free.value).toBeCloseTo(reference.yield.y, 12);
    law.relative(free.standardUncertainty, reference.yield.u_y, 1e-7);
    const tied = propagateUncertainty({
      inputs,
      measure,
      correlations: [{ pair: ["before", "after"], coefficient: reference.yield.with_r }],
    });
    law.relative(tied.standardUncertainty, reference.yield.u_y_r1, 1e-6);
  });

  it("combines the components of GUM example H.1", () => {
    const { components_nm: parts, uc } = reference.gumH1;
    const exact = (standardUncertainty: number): { value: number; standardUncertainty: number } => ({
      value: 0,
      standardUncertainty,
    });
    const combined = propagateUncertainty({
      inputs: { ls: exact(parts.u_ls), d: exact(parts.u_d), da: exact(parts.u_dalpha), dt: exact(parts.u_dtheta) },
      measure: ({ ls, d, da, dt }) => ls + d + da + dt,
    });
    expect(combined.standardUncertainty).toBeCloseTo(uc, 8);
    expect(Math.round(combined.standardUncertainty)).toBe(32);
  });

  it("gives the Welch-Satterthwaite degrees of freedom and coverage", () => {
    const { u, nu, nu_eff, k95 } = reference.welchSatterthwaite;
    const combined = propagateUncertainty({
      inputs: {
        a: { value: 0, standardUncertainty: u[0], degreesOfFreedom: nu[0] },
        b: { value: 0, standardUncertainty: u[1], degreesOfFreedom: nu[1] },
      },
      measure: ({ a, b }) => a + b,
    });
    welch.absolute(combined.degreesOfFreedom, nu_eff, 0.5e-6, "-");
    welch.absolute(studentTQuantile(0.975, combined.degreesOfFreedom), k95, 0.5e-6, "-");
    expect(combined.interval95[1]).toBeCloseTo(k95 * combined.standardUncertainty, 6);
  });
});

describe("propagation of distributions", () => {
  it("gives four equal rectangular inputs their interval (JCGM 101, 9.2.3)", () => {
    const one = rectangularInput(0, Math.sqrt(3));
    const { exactHalfWidth95, publishedHalfWidth95, u } = reference.fourRectangular;
    const result = monteCarlo({
      inputs: { a: one, b: one, c: one, d: one },
      measure: ({ a, b, c, d }) => a + b + c + d,
      draws: 1_000_000,
      seed: 3,
    });
    // Standard errors at a million draws: 0.0013 for u, 0.005 for an end of the interval; four of each.
    rectangles.absolute(result.standardUncertainty, u, 0.0052, "-");
    rectangles.absolute(result.interval[1], exactHalfWidth95, 0.02, "-");
    rectangles.absolute(result.interval[0], -exactHalfWidth95, 0.02, "-");
    rectangles.absolute(result.interval[1], publishedHalfWidth95, 0.02, "-");
  });

  it("gives the gauge block of JCGM 101, 9.5, its mean, uncertainty and 99 % interval", () => {
    // Model and inputs of Table 10, from memory: t for the four length readings, a rectangle for the expansion
    // coefficient, an arcsine for the cyclic temperature, rectangles of uncertain width for the two differences.
    const { meanNm, uNm, interval99Nm } = reference.gaugeBlock;
    const random = seededRandom(17);
    const studentT = (degrees: number): number => {
      let sum = 0;
      for (let at = 0; at < degrees; at++) sum += random.normal() ** 2;
      return random.normal() / Math.sqrt(sum / degrees);
    };
    const between = (low: number, high: number): number => low + (high - low) * random.uniform();
    const aboutWidth = (half: number, doubt: number): number => {
      const width = between(half - doubt, half + doubt);
      return between(-width, width);
    };
    const result = monteCarlo({
      inputs: { meanTemperature: { value: -0.1, standardUncertainty: 0.2 } },
      measure: ({ meanTemperature }) => {
        const standard = 50_000_623 + 25 * studentT(18);
        const difference = 215 + 6 * studentT(24) + 4 * studentT(5) + 7 * studentT(8);
        const expansion = between(9.5e-6, 13.5e-6);
        const cyclic = 0.5 * Math.sin(2 * Math.PI * random.uniform());
        const temperature = aboutWidth(0.05, 0.025);
        const excess = aboutWidth(1e-6, 0.1e-6);
        return (
          standard +
          difference -
          standard * (excess * (meanTemperature + cyclic) + expansion * temperature) -
          50_000_000
        );
      },
      draws: 200_000,
      coverage: 0.99,
    });
    gauge.absolute(result.mean, meanNm, 0.6, "nm");
    gauge.absolute(result.standardUncertainty, uNm, 0.7, "nm");
    gauge.absolute(result.interval[0], interval99Nm[0], 2, "nm");
    gauge.absolute(result.interval[1], interval99Nm[1], 2, "nm");
  });
});
