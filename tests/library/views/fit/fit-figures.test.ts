import { curves, fitCurve, influence } from "slabwright/fit";
import { fitInfluenceFigure, fitNormalFigure, fitResidualFigure } from "slabwright/views";
import { describe, expect, it } from "vitest";

interface Trace {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly marker?: { readonly symbol: string; readonly color: string };
}
const x = [1, 2, 3, 4, 5, 6, 7, 8];
const fit = fitCurve(curves.line, { x, y: [2.1, 3.9, 6.1, 8.2, 9.8, 12.1, 25, 16.1] });
const axisTitle = (layout: Readonly<Record<string, unknown>>, axis: string): string =>
  (layout[axis] as { title: { text: string } }).title.text;

describe("residual figures of a fit", () => {
  it("residuals against fitted values show every point once, units on both axes, and name the far one", () => {
    const figure = fitResidualFigure(fit, "min");
    const markers = (figure.data as Trace[]).filter((trace) => trace.marker);
    expect(markers.flatMap((trace) => trace.y).sort((a, b) => a - b)).toEqual([...fit.residuals].sort((a, b) => a - b));
    expect(axisTitle(figure.layout, "xaxis")).toBe("fitted (min)");
    expect(axisTitle(figure.layout, "yaxis")).toBe("observed − fitted (min)");
    expect(markers[1].marker?.symbol).not.toBe(markers[0].marker?.symbol);
    expect(figure.summary).toContain("1 of 8 residuals of line lie beyond 2 standard deviations");
    expect(figure.summary).toContain("point 7");
  });
  it("normal quantiles rise, and the summary names the largest residual", () => {
    const figure = fitNormalFigure(fit);
    const points = (figure.data as Trace[])[1];
    expect(points.x.length).toBe(8);
    for (let i = 1; i < 8; i++) expect(points.x[i]).toBeGreaterThan(points.x[i - 1]);
    expect(points.x[0]).toBeCloseTo(-points.x[7], 12);
    expect(figure.summary).toContain("largest is point 7");
  });
  it("influence is drawn as measured", () => {
    const measured = influence(curves.line, fit);
    const figure = fitInfluenceFigure(measured);
    const shown = (figure.data as Trace[]).flatMap((trace) => trace.x);
    expect(shown.length).toBe(8);
    expect(figure.summary).toBe(measured.reading);
  });
});
