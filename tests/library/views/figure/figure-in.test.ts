import { describe, expect, it } from "vitest";
import type { Figure } from "../../../../kernel-lib/library/src/views/figure/figure";
import { figureIn } from "../../../../kernel-lib/library/src/views/figure/figure-in";

const figure: Figure = {
  kind: "figure",
  data: [
    {
      type: "scatter",
      x: [25.4, null, 50.8],
      y: [100, 0, -40],
      error_y: { array: [10, 5, 0], color: "#000" },
      hovertemplate: "%{x:.1f} mm at %{y:.0f} °C, %{customdata:.1f} mm",
    },
    { type: "bar", orientation: "h", base: [25.4], x: [12.7], y: ["a"], hovertemplate: "%{base:.1f} mm" },
    { type: "scatter", yaxis: "y2", x: [25.4], y: [3] },
  ],
  layout: {
    xaxis: { title: { text: "slab thickness (mm)" }, range: [0, 254] },
    yaxis: { title: { text: "core (°C)" } },
    yaxis2: { title: { text: "time (min)" } },
    shapes: [{ xref: "x", x0: 25.4, x1: 25.4, yref: "paper", y0: 0, y1: 1 }],
    annotations: [{ xref: "x", x: 50.8, yref: "y", y: 100, text: "here" }],
  },
  summary: "words",
};

describe("figureIn", () => {
  it("leaves a metric kitchen's figure as it is", () => {
    expect(figureIn(figure, "metric")).toBe(figure);
  });

  it("converts every number on an axis of millimetres or °C, differences as differences, and nothing else", () => {
    const { data, layout, summary } = figureIn(figure, "us");
    expect(data).toEqual([
      {
        type: "scatter",
        x: [1, null, 2],
        y: [212, 32, -40],
        error_y: { array: [18, 9, 0], color: "#000" },
        hovertemplate: "%{x:.2f} in at %{y:.0f} °F, %{customdata:.1f} mm",
      },
      { type: "bar", orientation: "h", base: [1], x: [0.5], y: ["a"], hovertemplate: "%{base:.2f} in" },
      { type: "scatter", yaxis: "y2", x: [1], y: [3] },
    ]);
    expect(layout).toEqual({
      xaxis: { title: { text: "slab thickness (in)" }, range: [0, 10] },
      yaxis: { title: { text: "core (°F)" } },
      yaxis2: { title: { text: "time (min)" } },
      shapes: [{ xref: "x", x0: 1, x1: 1, yref: "paper", y0: 0, y1: 1 }],
      annotations: [{ xref: "x", x: 2, yref: "y", y: 212, text: "here" }],
    });
    expect(summary).toBe("words");
  });
});
