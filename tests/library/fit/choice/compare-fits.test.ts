import { compareFits, curves, fitCensoredTimes, fitCurve, fitYesNo } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const x = [1, 2, 3, 4, 5, 6, 7, 8];
const bent = [1.2, 3.9, 9.3, 15.7, 25.2, 35.8, 49.4, 63.7];
const fitsOf = (y: readonly number[]) => ({
  line: fitCurve(curves.line, { x, y }),
  square: fitCurve(curves.polynomial(2), { x, y }),
  cube: fitCurve(curves.polynomial(3), { x, y }),
});

describe("compareFits", () => {
  it("orders by AICc and gives each fit exp(−Δ/2) of the evidence, by hand", () => {
    const fits = fitsOf(bent);
    const { rows, best, n } = compareFits(fits);
    expect(n).toBe(8);
    const lowest = Math.min(...Object.values(fits).map((fit) => fit.aicc));
    const shares = rows.map((row) => Math.exp(-0.5 * (fits[row.name as keyof typeof fits].aicc - lowest)));
    const total = shares.reduce((sum, share) => sum + share, 0);
    rows.forEach((row, k) => {
      const fit = fits[row.name as keyof typeof fits];
      expect(row.aicc).toBe(fit.aicc);
      expect(row.bic).toBe(fit.bic);
      expect(row.rss).toBe(fit.rss);
      expect(row.residualSd).toBe(fit.residualSd);
      expect(row.deltaAicc).toBeCloseTo(fit.aicc - lowest, 12);
      expect(row.weight).toBeCloseTo(shares[k] / total, 12);
      if (k > 0) expect(row.aicc).toBeGreaterThan(rows[k - 1].aicc);
    });
    expect(rows.map((row) => row.parameterCount).toSorted()).toEqual([2, 3, 4]);
    expect(best).toBe("square");
    expect(rows[0].name).toBe(best);
  });
  it("predicts each point without itself: residual over 1 − leverage, as fits without it give", () => {
    const fit = fitsOf(bent).line;
    let squares = 0;
    x.forEach((_, i) => {
      const rest = fitCurve(curves.line, { x: x.filter((__, k) => k !== i), y: bent.filter((__, k) => k !== i) });
      squares += (bent[i] - rest.parameters.a.estimate - rest.parameters.b.estimate * x[i]) ** 2;
    });
    const [row] = compareFits({ fit }).rows;
    expect(row.leaveOneOutError).toBeCloseTo(Math.sqrt(squares / 8), 8);
  });
  it("says how far the next one is, and when that is too close to tell", () => {
    const { line, square } = fitsOf(bent);
    expect(compareFits({ line, square }).reading).toBe(
      `AICc is lowest for square; line comes next, ${(line.aicc - square.aicc).toFixed(1)} above it.`,
    );
    const straight = fitsOf([2.9, 3.7, 4.8, 5.3, 6.6, 7.0, 8.3, 8.9]);
    const close = { ...straight.square, aicc: straight.line.aicc + 1.9 };
    expect(compareFits({ line: straight.line, close }).reading).toContain("1.9 above it, too close to tell apart");
    const apart = { ...straight.square, aicc: straight.line.aicc + 2 };
    expect(compareFits({ line: straight.line, apart }).reading).not.toContain("too close");
    expect(compareFits({ line }).reading).toBe("Only line could be compared.");
  });
  it("compares fits by likelihood too, which have no sum of squares", () => {
    const lower = [8, 8, 10, 10, 12, 8, 10, 6];
    const upper = [10, 10, 12, 12, 14, 10, 12, 8];
    const { rows } = compareFits({
      logLogistic: fitCensoredTimes({ lower, upper }),
      weibull: fitCensoredTimes({ lower, upper, distribution: "weibull" }),
    });
    for (const row of rows)
      expect(row).toMatchObject({ rss: null, residualSd: null, leaveOneOutError: null, parameterCount: 2 });
    expect(rows[0].weight + rows[1].weight).toBeCloseTo(1, 12);
  });
  it("gives no weight to a fit with too few points for AICc, and breaks ties by the number of parameters", () => {
    const few = { x: [1, 2, 3, 4, 5], y: [1.1, 2.3, 2.8, 4.2, 4.9] };
    const { rows } = compareFits({
      cube: fitCurve(curves.polynomial(3), few),
      square: fitCurve(curves.polynomial(2), few),
      line: fitCurve(curves.line, few),
    });
    expect(rows.map((row) => row.name)).toEqual(["line", "square", "cube"]);
    expect(rows.slice(1).map((row) => [row.aicc, row.deltaAicc, row.weight])).toEqual([
      [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0],
      [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0],
    ]);
    expect(rows[0].weight).toBe(1);
    const none = compareFits({ cube: fitCurve(curves.polynomial(3), few) });
    expect(none.rows[0].weight).toBe(0);
  });
  it("leaves out what did not converge and says so", () => {
    const { line, square } = fitsOf(bent);
    const lost = { ...square, converged: false };
    const comparison = compareFits({ line, lost });
    expect(comparison.rows.map((row) => row.name)).toEqual(["line"]);
    expect(comparison.notes).toEqual(["lost did not converge and is left out."]);
    expect(compareFits({ line, square }).notes).toEqual([]);
    expect(() => compareFits({ lost })).toThrow("must hold at least one that converged");
  });
  it("refuses nothing, other observations and other kinds", () => {
    const { line } = fitsOf(bent);
    expect(() => compareFits({})).toThrow("must hold at least one fit");
    const shorter = fitCurve(curves.line, { x: x.slice(1), y: bent.slice(1) });
    expect(() => compareFits({ line, shorter })).toThrow(
      "compareFits: shorter must rest on the same observations as the others (8), got 7",
    );
    const outcome = fitYesNo({ covariates: { x }, yes: [0, 0, 1, 0, 1, 0, 1, 1] });
    expect(() => compareFits({ line, outcome })).toThrow("must be of one kind");
  });
  it("takes a fit at a bound for another's twin only where the curve is the same", () => {
    // bends down: b of the slab time rests at 0, and the line through zero and the power law are other curves
    const y = [7.1, 8.4, 10.2, 10.9, 12.1, 12.6, 13.8, 14.2];
    const slab = fitCurve(curves.slabTime, { x, y });
    const line = fitCurve(curves.line, { x, y });
    const power = fitCurve(curves.slabTimePower, { x, y });
    const square = fitCurve(curves.polynomial(2), { x, y });
    const { rows, notes } = compareFits({ slab, power, square });
    expect(rows.map((row) => row.sameAs)).toEqual([null, null, null]);
    expect(notes).toEqual(["slab rests at b = 0, which its count of parameters leaves out."]);
    const all = compareFits({ slab, line, power });
    expect(all.rows.find((row) => row.name === "slab")).toMatchObject({ sameAs: "line", weight: 0 });
    // a second fit at the bound is no narrower form
    expect(compareFits({ slab, again: slab }).rows.map((row) => row.sameAs)).toEqual([null, null]);
  });
});
