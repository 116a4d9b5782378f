import { largestOf } from "../../statistics/extremes";
import type { Figure } from "./figure";
import { legendRows } from "./svg/legend-rows";
import { type Box, escapeXml, legendSign } from "./svg/marks";
import { axisLayout, type Layout, LONGEST_NAME, PANEL_NAME, panelSvg } from "./svg/panel";
import type { Trace } from "./svg/trace";

const WIDTH = 720;
const DRAWN = new Set(["scatter", "bar", "waterfall", "heatmap", "contour"]);

/**
 * A figure as a small still picture (SVG), for viewers that do not run plotly: lines, points, bands, error bars, bars,
 * steps and shaded fields with their axes, legend and title. Contours are drawn as shaded fields. What it cannot draw
 * it names at its foot.
 *
 * @param figure any figure of the library
 * @returns SVG, 720 pixels wide, without script, style sheet or reference to anything outside itself
 * @example
 * const figure = { kind: "figure" as const, data: [{ type: "bar", x: ["a"], y: [2] }], layout: {}, summary: "a is 2" };
 * svgOf(figure).startsWith("<svg"); // → true
 */
export function svgOf(figure: Figure): string {
  const traces = (figure.data as readonly Trace[]).filter(
    (trace) => trace.visible !== false && trace.visible !== "legendonly",
  );
  const drawn = traces.filter((trace) => DRAWN.has(trace.type ?? "scatter"));
  const layout = figure.layout as Layout;
  const legend = layout.showlegend === false ? [] : traces.filter((trace) => trace.showlegend !== false && trace.name);
  const rows = legendRows(legend, WIDTH);
  const plotHeight = Math.max(220, (layout.height ?? 420) - 100);
  const top = layout.annotations?.some(({ name }) => name === PANEL_NAME) ? 60 : 40;
  const box: Box = { left: leftRoom(drawn, layout), right: WIDTH - 20, top, bottom: top + plotHeight };
  const legendTop = box.bottom + 54;
  const left = traces.length - drawn.length;
  const height = legendTop + rows.length * 20 + (left > 0 ? 22 : 4);

  const pairs = [...new Set(drawn.map((trace) => `${trace.xaxis ?? "x"} ${trace.yaxis ?? "y"}`))];
  const panels = pairs.map((pair) => panelSvg(pair, drawn, layout, box));
  const keys = rows.flatMap((row, line) =>
    row.map(({ trace, at }) => {
      const middle = legendTop + line * 20;
      const words = `<text x="${at + 30}" y="${middle + 4}" font-size="12">${escapeXml(String(trace.name))}</text>`;
      return legendSign(trace, traces.indexOf(trace), at, middle) + words;
    }),
  );
  const missing =
    left > 0
      ? `<text x="12" y="${height - 8}" font-size="11" fill="#666">Left out of this still picture: ${left} of ${traces.length} drawings.</text>`
      : "";
  const title = layout.title?.text
    ? `<text x="${WIDTH / 2}" y="24" text-anchor="middle" font-size="15">${escapeXml(layout.title.text)}</text>`
    : "";
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" font-family="system-ui, sans-serif" font-size="12" fill="#222">` +
    `<title>${escapeXml(figure.summary)}</title><rect width="${WIDTH}" height="${height}" fill="#fff"/>${title}` +
    `${panels.join("")}${keys.join("")}${missing}</svg>`
  );
}

function leftRoom(traces: readonly Trace[], layout: Layout): number {
  const names = traces.flatMap((trace) =>
    (trace.y ?? []).filter((place): place is string => typeof place === "string"),
  );
  const longest = Math.min(LONGEST_NAME, Math.max(0, largestOf(names.map((name) => name.length))));
  return Math.max(64, 6.2 * longest + (axisLayout(layout, "y").title?.text ? 34 : 16));
}
