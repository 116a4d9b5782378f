import { describe, expect, it } from "vitest";
import type { Figure } from "../../../../kernel-lib/library/src/views/figure/figure";
import { smallMultiples } from "../../../../kernel-lib/library/src/views/figure/small-multiples";
import { svgOf } from "../../../../kernel-lib/library/src/views/figure/svg-of";

const figureOf = (y: readonly (number | string)[], more: Partial<Figure> = {}): Figure => ({
  kind: "figure",
  data: [
    { type: "scatter", name: "crisp", x: [1, 2], y },
    { type: "scatter", name: "unseen", visible: false, x: [1], y: [1] },
  ],
  layout: {
    xaxis: { title: { text: "thickness (mm)" } },
    yaxis: { title: { text: "time (min)" } },
    shapes: [{ type: "line", xref: "paper", yref: "y", x0: 0, x1: 1, y0: 1, y1: 1 }],
    sliders: [{}],
  },
  summary: "It takes 2 min. Probe the thickest piece.",
  ...more,
});
const panels = ["oats", "rye", "barley"].map((name, at) => ({ name, figure: figureOf([at, at + 1]) }));

describe("smallMultiples", () => {
  it("leaves a single figure as it is", () => {
    expect(smallMultiples([panels[0]], "Crisp time")).toBe(panels[0].figure);
  });

  it("gives each figure axes, shapes and a name of its own, in panels that do not overlap", () => {
    const { data, layout } = smallMultiples(panels, "Crisp time");
    expect(data.map((trace) => (trace as { xaxis: string }).xaxis)).toEqual(["x", "x2", "x3"]);
    const domain = (axis: string): readonly [number, number] => (layout[axis] as { domain: [number, number] }).domain;
    expect(domain("xaxis")[1]).toBeLessThan(domain("xaxis2")[0]);
    expect(domain("xaxis3")).toEqual(domain("xaxis"));
    expect(domain("yaxis3")[1]).toBeLessThan(domain("yaxis")[0]);
    expect(domain("yaxis3")[0]).toBeGreaterThanOrEqual(0);
    expect(layout.shapes).toMatchObject(["", "2", "3"].map((end) => ({ xref: `x${end} domain`, yref: `y${end}` })));
    expect(layout.annotations).toMatchObject(panels.map(({ name }) => ({ text: name })));
    expect(layout).not.toHaveProperty("sliders");
  });

  it("names a trace once in the legend, and leaves out what is not seen", () => {
    const { data } = smallMultiples(panels, "Crisp time");
    expect(data.map((trace) => (trace as { showlegend: boolean }).showlegend)).toEqual([true, false, false]);
  });

  it("stacks panels that have names on their upright axis", () => {
    const named = panels.map(({ name }) => ({ name, figure: figureOf(["a long name", "b"]) }));
    const { layout } = smallMultiples(named, "By variant");
    expect((layout.xaxis2 as { domain: number[] }).domain).toEqual([0, 1]);
  });

  it("says a caution once, and what is each figure's own under its name", () => {
    const own = [figureOf([1], { summary: "9 min. Probe." }), figureOf([1], { summary: "12 min. Probe." })];
    const { summary } = smallMultiples(
      [
        { name: "oats", figure: own[0] },
        { name: "rye", figure: own[1] },
      ],
      "Crisp time",
    );
    expect(summary).toBe("Crisp time. oats: 9 min. rye: 12 min. Probe.");
  });

  it("draws every panel with its name in the still picture", () => {
    const svg = svgOf(smallMultiples(panels, "Crisp time"));
    for (const { name } of panels) expect(svg).toContain(`>${name}</text>`);
    expect(svg.match(/>time \(min\)<\/text>/g)).toHaveLength(3);
  });
});
