import { type Axes, type Box, bandSvg, barSvg, escapeXml, heatmapSvg, round, scatterSvg, waterfallSvg } from "./marks";
import { placesOf } from "./places-of";
import { type Scale, scaleOf } from "./scale";
import { shapesSvg } from "./shapes";
import { stackedBars } from "./stacked-bars";
import type { AxisLayout, Shape, Trace } from "./trace";

/** The fields of a plotly layout that a panel draws. */
export type Layout = Readonly<Record<string, unknown>> & {
  readonly title?: { readonly text?: string };
  readonly height?: number;
  readonly barmode?: string;
  readonly showlegend?: boolean;
  readonly shapes?: readonly Shape[];
  readonly annotations?: readonly { readonly name?: string; readonly text?: string; readonly xref?: string }[];
};

/** Letters of a name on the upright axis. */
export const LONGEST_NAME = 36;

/** The annotation that names a panel among others. */
export const PANEL_NAME = "panel name";

/** One pair of axes with what is drawn on it. */
export function panelSvg(pair: string, all: readonly Trace[], layout: Layout, whole: Box): string {
  const [xName, yName] = pair.split(" ");
  const here = all.filter((trace) => (trace.xaxis ?? "x") === xName && (trace.yaxis ?? "y") === yName);
  // contour lines are drawn as a field, which one that lies under them is already
  const hasField = here.some(({ type }) => type === "heatmap");
  const traces = here.filter(({ type }) => type !== "contour" || !hasField);
  const [xLayout, yLayout] = [axisLayout(layout, xName), axisLayout(layout, yName)];
  const [xFrom, xTo] = xLayout.domain ?? [0, 1];
  const [yFrom, yTo] = yLayout.domain ?? [0, 1];
  const box: Box = {
    left: whole.left + xFrom * (whole.right - whole.left),
    right: whole.left + xTo * (whole.right - whole.left),
    top: whole.bottom - yTo * (whole.bottom - whole.top),
    bottom: whole.bottom - yFrom * (whole.bottom - whole.top),
  };
  const stacked = layout.barmode === "stack" || layout.barmode === "relative" ? stackedBars(traces) : traces;
  const sharing = all.filter((trace) => (trace.xaxis ?? "x") === xName || (trace.yaxis ?? "y") === yName);
  const onX = sharing.filter((trace) => (trace.xaxis ?? "x") === xName);
  const onY = sharing.filter((trace) => (trace.yaxis ?? "y") === yName);
  const axes: Axes = {
    x: scaleOf(placesOf(restacked(onX, stacked), "x"), xLayout, box.left, box.right, hasBars(onX, "h")),
    y: scaleOf(placesOf(restacked(onY, stacked), "y"), yLayout, box.bottom, box.top, hasBars(onY, "v")),
  };
  const marks = stacked.map((trace, at) =>
    traceSvg(trace, stacked[at - 1], axes, all.indexOf(traces[at]), stacked, layout),
  );
  const view = [box.left, box.top, box.right - box.left, box.bottom - box.top].map(round);
  const [left, top, width, height] = view;
  // of panels that stand side by side on one y axis, only the first says what it holds
  const isFirst = !onY.some((trace) => (axisLayout(layout, trace.xaxis ?? "x").domain?.[0] ?? 0) < xFrom);
  return (
    gridSvg(axes, box, isFirst) +
    `<svg x="${left}" y="${top}" width="${width}" height="${height}" viewBox="${view.join(" ")}">${marks.join("")}` +
    `${shapesSvg(layout.shapes ?? [], xName, yName, axes, box)}</svg>` +
    axisTitles(xLayout, isFirst ? yLayout : {}, box, xFrom === 0) +
    panelName(layout, xName, box)
  );
}

function traceSvg(
  trace: Trace,
  before: Trace | undefined,
  axes: Axes,
  index: number,
  all: readonly Trace[],
  layout: Layout,
): string {
  if (trace.type === "heatmap" || trace.type === "contour") return heatmapSvg(trace, axes);
  if (trace.type === "waterfall") return waterfallSvg(trace, axes, index);
  if (trace.type === "bar") {
    const bars = all.filter((other) => other.type === "bar");
    const together = ["stack", "relative", "overlay"].includes(layout.barmode ?? "group");
    return barSvg(
      trace,
      axes,
      together ? { index, bar: 0, bars: 1 } : { index, bar: bars.indexOf(trace), bars: bars.length },
    );
  }
  const band = trace.fill === "tonexty" && before ? bandSvg(trace, before, axes, index) : "";
  return band + scatterSvg(trace, axes, index);
}

/** Traces of other panels stand as they are, those of this panel as they were stacked. */
function restacked(traces: readonly Trace[], stacked: readonly Trace[]): readonly Trace[] {
  const mine = new Set(stacked.map((trace) => trace.name));
  return [...stacked, ...traces.filter((trace) => !mine.has(trace.name))];
}

function gridSvg({ x, y }: Axes, box: Box, withY: boolean): string {
  let svg = "";
  for (const { pixel, label } of thinned(x)) {
    if (!x.named) svg += `<path d="M${round(pixel)} ${round(box.top)}V${round(box.bottom)}" stroke="#e5e5e5"/>`;
    svg += `<text x="${round(pixel)}" y="${round(box.bottom + 17)}" text-anchor="middle" font-size="11">${escapeXml(short(label, x.named ? Math.max(8, Math.floor(x.step / 6)) : 12))}</text>`;
  }
  for (const { pixel, label } of y.ticks) {
    if (!y.named) svg += `<path d="M${round(box.left)} ${round(pixel)}H${round(box.right)}" stroke="#e5e5e5"/>`;
    if (withY)
      svg += `<text x="${round(box.left - 7)}" y="${round(pixel + 4)}" text-anchor="end" font-size="11">${escapeXml(short(label, LONGEST_NAME))}</text>`;
  }
  return `${svg}<path d="M${round(box.left)} ${round(box.top)}V${round(box.bottom)}H${round(box.right)}" fill="none" stroke="#444"/>`;
}

function panelName({ annotations = [] }: Layout, xName: string, box: Box): string {
  const own = annotations.find(({ name, xref }) => name === PANEL_NAME && xref === `${xName} domain`);
  return own === undefined
    ? ""
    : `<text x="${round(box.left)}" y="${round(box.top - 6)}" font-size="13">${escapeXml(own.text ?? "")}</text>`;
}

/** How far left of a panel the title of its upright axis stands; the first panel has room for longer labels. */
const TITLE_LEFT = 44;

function axisTitles(x: AxisLayout, y: AxisLayout, box: Box, isLeftmost: boolean): string {
  const middle = round((box.top + box.bottom) / 2);
  const left = isLeftmost ? 14 : round(box.left - TITLE_LEFT);
  const across = `<text x="${round((box.left + box.right) / 2)}" y="${round(box.bottom + 36)}" text-anchor="middle" font-size="13">${escapeXml(x.title?.text ?? "")}</text>`;
  if (!y.title?.text) return across;
  return `${across}<text transform="translate(${left} ${middle}) rotate(-90)" text-anchor="middle" font-size="13">${escapeXml(y.title.text)}</text>`;
}

/** The part of a layout that describes one axis: `x`, `y2`, … */
export function axisLayout(layout: Readonly<Record<string, unknown>>, name: string): AxisLayout {
  return (layout[`${name[0]}axis${name.slice(1)}`] ?? {}) as AxisLayout;
}

function hasBars(traces: readonly Trace[], orientation: "h" | "v"): boolean {
  return traces.some((trace) =>
    trace.type === "waterfall"
      ? orientation === "v"
      : trace.type === "bar" && trace.base === undefined && (trace.orientation ?? "v") === orientation,
  );
}

function thinned(scale: Scale): Scale["ticks"] {
  if (!scale.named || scale.step >= 45) return scale.ticks;
  const every = Math.ceil(45 / scale.step);
  return scale.ticks.filter((_, at) => at % every === 0);
}

function short(label: string, most: number): string {
  return label.length > most ? `${label.slice(0, most - 1)}…` : label;
}
