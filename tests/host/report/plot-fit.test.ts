import fc from "fast-check";
import { expect, it } from "vitest";
import { plotFit } from "../../../kernel-lib/host/src/report/plot-fit";

const words = "oat bars: the clocks of a piece of 40 × 25 × 8.9 mm at 200 °C (395 °F), in the small basket";
const single = {
  data: [
    {
      type: "bar",
      y: ["a much longer name than a phone has room for", "rye"],
      x: [1, 2],
      marker: { color: "#000000" },
    },
  ],
  layout: { title: { text: words }, yaxis: { title: { text: "variant" } }, xaxis: { title: { text: words } } },
};
const axis = (from: number, to: number, anchor: string) => ({
  domain: [from, to],
  anchor,
  title: { text: "time (min)" },
});
const grid = {
  data: [
    { x: [1], y: [2] },
    { x: [1], y: [2], xaxis: "x2", yaxis: "y2" },
  ],
  layout: {
    height: 416,
    margin: { t: 76, b: 120 },
    xaxis: axis(0, 0.44, "y"),
    yaxis: axis(0, 1, "x"),
    xaxis2: axis(0.56, 1, "y2"),
    yaxis2: axis(0, 1, "x2"),
  },
};
const linesOf = (text: string): string[] => text.split("<br>");
// biome-ignore lint/suspicious/noExplicitAny: plotly's own objects
const fit = (figure: typeof single | typeof grid, widthPx: number, isDark = false): any =>
  plotFit(figure, { widthPx, isDark });

it("breaks a title into lines that the width has room for, loses no word of it, and makes room above", () => {
  fc.assert(
    fc.property(fc.integer({ min: 280, max: 1600 }), (widthPx) => {
      const { layout, heightPx } = fit(single, widthPx);
      const lines = linesOf(layout.title.text);
      expect(lines.join(" ")).toBe(words);
      const lettersPx = 0.55 * layout.title.font.size;
      for (const line of lines) if (line.includes(" ")) expect(line.length * lettersPx).toBeLessThanOrEqual(widthPx);
      expect(heightPx).toBeCloseTo(440 + (lines.length - 1) * 1.3 * layout.title.font.size, 6);
      expect(layout.height).toBe(heightPx);
    }),
  );
  expect(linesOf(fit(single, 367).layout.title.text).length).toBeGreaterThan(1);
});

it("puts panels below each other on a phone, each as wide as the figure and none over another", () => {
  const { layout, heightPx } = fit(grid, 367);
  expect(layout.xaxis.domain).toEqual([0, 1]);
  expect(layout.xaxis2.domain).toEqual([0, 1]);
  expect(layout.yaxis.domain[1]).toBe(1);
  expect(layout.yaxis2.domain[1]).toBeLessThan(layout.yaxis.domain[0]);
  expect(heightPx).toBeGreaterThan(416);
  expect(fit(grid, 1000).layout.xaxis2.domain).toEqual([0.56, 1]);
});

it("breaks long names on the upright axis on a phone only", () => {
  const { yaxis } = fit(single, 367).layout;
  expect(yaxis.tickvals).toEqual(single.data[0].y);
  expect(linesOf(yaxis.ticktext[0]).join(" ")).toBe(single.data[0].y[0]);
  expect(yaxis.ticktext[0]).toContain("<br>");
  expect(fit(single, 1000).layout.yaxis.tickvals).toBeUndefined();
});

it("has light ink on a dark page, and the figure's own on a light one", () => {
  expect(fit(single, 1000, true).data[0].marker.color).toBe("#e8e6e1");
  expect(fit(single, 1000).data).toEqual(single.data);
  expect(fit(single, 1000, true).layout).toMatchObject({ paper_bgcolor: "#242526", font: { color: "#e8e6e1" } });
  expect(fit(single, 1000).layout.paper_bgcolor).toBeUndefined();
});

it("is whole by itself, as the report carries it as text", () => {
  const carried = new Function(`return ${plotFit.toString()}`)() as typeof plotFit;
  for (const isDark of [true, false])
    for (const widthPx of [367, 1000])
      expect(carried(grid, { widthPx, isDark })).toEqual(plotFit(grid, { widthPx, isDark }));
});
