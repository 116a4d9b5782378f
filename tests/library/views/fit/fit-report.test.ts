import { compareFits, curves, fitCensoredTimes, fitCurve } from "slabwright/fit";
import { fitComparisonTable, fitReport, fitTable } from "slabwright/views";
import { describe, expect, it } from "vitest";

const data = { x: [0.1, 0.2, 0.5, 1, 2, 3], y: [49, 71, 112, 131, 148, 150] };
const fit = fitCurve(curves.hyperbola, data);

describe("fitTable and fitReport", () => {
  it("give every parameter a row with its estimate and interval", () => {
    const table = fitTable(fit);
    expect(table.title).toBe("hyperbola: y = top x/(half + x)");
    expect(table.rows.map((row) => row[0])).toEqual(["top", "half"]);
    expect(table.rows[0].slice(1, 5)).toEqual([
      fit.parameters.top.estimate,
      fit.parameters.top.standardError,
      ...(fit.parameters.top.interval95 ?? []),
    ]);
    expect(table.notes[0]).toBe("Rests on 6 observations (4 degrees of freedom), x from 0.1 to 3.");
  });
  it("read as text, with correlation and how the search ended", () => {
    const text = fitReport(fit);
    expect(text).toContain(`top ~ half ${fit.correlation[0][1].toFixed(3)}`);
    expect(text).toContain("Search: converged");
    expect(text).toContain(String(Number(fit.parameters.half.estimate.toPrecision(4))));
  });
  it("say what is fixed, at a bound, or not there to report", () => {
    const held = fitCurve(curves.slabTime, { x: [1, 2, 3, 4, 5], y: [4, 5.5, 6.7, 7.6, 8.3] }, { fixed: { c0: 3 } });
    expect(fitTable(held).rows.map((row) => row[5])).toEqual(["fixed", "", "at its lower bound"]);
    expect(fitReport(held)).toContain("b rests at its lower bound 0");
  });
  it("take a fit of times seen at checks too", () => {
    const times = fitCensoredTimes({ lower: [8, 8, 10, 10, 12, 8], upper: [10, 10, 12, 12, 14, 10] });
    expect(fitReport(times)).toContain("accelerated failure time, logLogistic");
    expect(fitReport(times)).not.toContain("Residual standard deviation");
  });
});

describe("fitComparisonTable", () => {
  it("lists forms by AICc with the reading below", () => {
    const comparison = compareFits({ hyperbola: fit, line: fitCurve(curves.line, data) });
    const table = fitComparisonTable(comparison);
    expect(table.rows[0][0]).toBe("hyperbola");
    expect(table.rows[0][4]).toBe(0);
    expect(table.notes[0]).toBe(comparison.reading);
  });
});
