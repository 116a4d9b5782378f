import { compareFits, compareSlabTimeForms, curves, fitCurve, fitSlabTime } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";
import { fitComparisonTable } from "../../../../kernel-lib/library/src/views/fit/fit-comparison-table";

// bends up and aims below zero at L = 0, so that c0 presses against its bound 0
const pressed = { thicknessMm: [6, 8, 10, 12, 14, 16], timeMin: [4.1, 6.3, 8.9, 11.4, 14.6, 17.7] };

describe("compareSlabTimeForms with terms that rest at their bound", () => {
  const comparison = compareSlabTimeForms(pressed);
  const row = (name: string) => comparison.rows.find((one) => one.name === name)!;

  it("gives the full form, resting at c0 = 0, the AICc of the same curve without c0", () => {
    expect(comparison.fits.full!.parameters.c0.atBound).toBe("lower");
    expect(comparison.fits.full!.rss).toBeCloseTo(comparison.fits.noConstant!.rss, 10);
    expect(row("full").aicc).toBeCloseTo(row("noConstant").aicc, 8);
    expect(row("full").bic).toBeCloseTo(row("noConstant").bic, 8);
  });
  it("counts it with the parameters that it estimates, says which rest, and whose curve it is", () => {
    expect(row("full")).toMatchObject({ parameterCount: 2, atBound: ["c0"], sameAs: "noConstant", weight: 0 });
    expect(row("noConstant")).toMatchObject({ parameterCount: 2, atBound: [], sameAs: null });
    expect(comparison.rows.reduce((sum, one) => sum + one.weight, 0)).toBeCloseTo(1, 12);
    expect(comparison.best).not.toBe("full");
    expect(comparison.notes).toContain(
      "full rests at c0 = 0: it is the curve of noConstant again, with as many parameters, and its weight counts there.",
    );
    expect(fitComparisonTable(comparison).notes.join(" ")).toContain("full rests at c0 = 0");
  });
  it("says in words that c0 rests at its bound", () => {
    expect(comparison.reading).toContain("the constant c0 is not supported (it rests at its bound 0)");
  });
  it("picks t = aL where that is the truth, and seldom calls an L² term or a constant supported", () => {
    const random = seededRandom(4);
    let supported = 0;
    let constant = 0;
    let slopeOnly = 0;
    for (let kitchen = 0; kitchen < 200; kitchen++) {
      const thicknessMm = [6, 7, 8, 9, 10, 11, 12, 13, 14, 15];
      const timeMin = thicknessMm.map((x) => 0.9 * x * Math.exp(random.normal(0, 0.03)));
      const { reading, best } = compareSlabTimeForms({ thicknessMm, timeMin, scatter: "proportional" });
      if (/L² term is supported/.test(reading)) supported++;
      if (/c0 is supported/.test(reading)) constant++;
      if (best === "slopeOnly") slopeOnly++;
    }
    expect(supported).toBeLessThan(10);
    expect(constant).toBeLessThan(10);
    expect(slopeOnly).toBeGreaterThan(120);
  });
});

describe("t = aL", () => {
  it("is one of the forms: the slope through zero of regression by hand", () => {
    const fit = fitSlabTime({ thicknessMm: [8, 10, 12], timeMin: [7.1, 9.2, 10.6], form: "slopeOnly" });
    // a = ΣLt/ΣL²
    expect(fit.parameters.a.estimate).toBeCloseTo((8 * 7.1 + 10 * 9.2 + 12 * 10.6) / (64 + 100 + 144), 10);
    expect(fit.parameters.c0).toMatchObject({ estimate: 0, fixed: true });
    expect(fit.parameters.b).toMatchObject({ estimate: 0, fixed: true });
    expect(fit.equation).toBe("t = aL");
  });
  it("is told by trials at one thickness, and is then the only form", () => {
    const trials = { thicknessMm: [10, 10, 10], timeMin: [9, 10, 11] };
    expect(fitSlabTime({ ...trials, form: "slopeOnly" }).parameters.a.estimate).toBeCloseTo(1, 10);
    const comparison = compareSlabTimeForms(trials);
    expect(Object.keys(comparison.fits)).toEqual(["slopeOnly"]);
    expect(() => fitSlabTime({ thicknessMm: [10], timeMin: [9], form: "slopeOnly" })).toThrow(
      "must number more than the 1 parameter of t = aL",
    );
  });
});

describe("compareFits of curves at a bound", () => {
  it("counts what any model estimates, and leaves a fit whose like is not there alone", () => {
    const x = [1, 2, 3, 4, 5, 6, 7, 8];
    const y = [7.1, 8.4, 10.2, 10.9, 12.1, 12.6, 13.8, 14.2];
    const slab = fitCurve(curves.slabTime, { x, y });
    expect(slab.parameters.b.atBound).toBe("lower");
    const both = compareFits({ slab, line: fitCurve(curves.line, { x, y }) });
    expect(both.rows.map((one) => one.name)).toEqual(["line", "slab"]);
    expect(both.rows[1]).toMatchObject({ parameterCount: 2, sameAs: "line" });
    expect(both.rows[1].aicc).toBeCloseTo(both.rows[0].aicc, 8);
    expect(compareFits({ slab, other: fitCurve(curves.slabTimePower, { x, y }) }).rows).toContainEqual(
      expect.objectContaining({ name: "slab", parameterCount: 2, atBound: ["b"], sameAs: null }),
    );
  });
});

describe("what compareSlabTimeForms says of its terms", () => {
  const L = [6, 8, 10, 12, 14, 16, 18, 20];
  const wiggle = [0.12, -0.2, 0.05, 0.15, -0.18, 0.1, -0.06, 0.02];
  const readingOf = (curve: (x: number) => number): string =>
    compareSlabTimeForms({ thicknessMm: L, timeMin: L.map((x, i) => curve(x) + wiggle[i]) }).reading;
  const aiccOf = (curve: (x: number) => number) => {
    const { fits } = compareSlabTimeForms({ thicknessMm: L, timeMin: L.map((x, i) => curve(x) + wiggle[i]) });
    return { full: fits.full!.aicc, noConstant: fits.noConstant!.aicc, linear: fits.linear!.aicc };
  };

  it("sets the best form with a term against the best without it", () => {
    const curve = (x: number): number => 9 + 0.2 * x + 0.02 * x * x;
    const { full, noConstant, linear } = aiccOf(curve);
    expect(full).toBeLessThan(Math.min(noConstant, linear));
    expect(Math.abs(noConstant - linear)).toBeGreaterThan(1);
    expect(readingOf(curve)).toBe(
      `AICc is lowest for t = c0 + aL + bL²: the L² term is supported (AICc falls by ${(linear - full).toFixed(1)} with it) ` +
        `by these 8 trials, and the constant c0 is supported (AICc falls by ${(noConstant - full).toFixed(1)} with it).`,
    );
  });
  it("calls a term weakly supported where AICc falls by less than 2, and not where it rises", () => {
    // the bend is turned down until it is seen with difficulty, and then not at all
    const words = [0.012, 0.0095, 0.009, 0.0085, 0.008, 0.0075, 0.007, 0.004].map((b) => {
      const curve = (x: number): number => 5 + 0.5 * x + b * x * x;
      const { full, linear } = aiccOf(curve);
      const said = /the L² term is (supported|weakly supported|not supported) \(AICc (falls|rises) by ([\d.]+)/.exec(
        readingOf(curve),
      )!;
      const fall = linear - full;
      expect(said[1]).toBe(fall > 2 ? "supported" : fall > 0 ? "weakly supported" : "not supported");
      expect(said[2]).toBe(fall > 0 ? "falls" : "rises");
      expect(Number(said[3])).toBeCloseTo(Math.abs(fall), 1);
      return said[1];
    });
    expect(new Set(words)).toEqual(new Set(["supported", "weakly supported", "not supported"]));
  });
  it("passes on what is not about too few trials, and refuses trials that carry no form", () => {
    const broken = {
      thicknessMm: L,
      get timeMin(): number[] {
        throw new TypeError("no times");
      },
    };
    expect(() => compareSlabTimeForms(broken)).toThrow("no times");
    expect(() => compareSlabTimeForms({ thicknessMm: [9], timeMin: [10] })).toThrow(
      "compareSlabTimeForms: trials must carry at least one form (fitSlabTime: thicknessMm must hold at least 3",
    );
  });
});
