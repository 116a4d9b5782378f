import { ownValue } from "../../../check/own-value";
import { largestOf, smallestOf } from "../../../statistics/extremes";
import { MARKERS, PALETTE } from "../palette";
import type { Scale } from "./scale";
import type { Place, Trace } from "./trace";

/** Two scales that a trace is drawn with. */
export interface Axes {
  readonly x: Scale;
  readonly y: Scale;
}

/** Pixels that a drawing fills. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where a trace stands among those that share its axes. */
export interface Slot {
  /** place of the trace in the figure, for a colour where it has none */
  readonly index: number;
  /** place among the bars that stand side by side, and how many there are */
  readonly bar: number;
  readonly bars: number;
}

/** The colour of a trace: its own, or the palette's. */
export function colourOf(trace: Trace, index: number): string {
  const marker = typeof trace.marker?.color === "string" ? trace.marker.color : undefined;
  return attribute(trace.line?.color ?? marker ?? PALETTE[index % (PALETTE.length - 2)]);
}

/** A trace of points, lines and bands. */
export function scatterSvg(trace: Trace, { x, y }: Axes, index: number): string {
  const colour = colourOf(trace, index);
  const pixels = (trace.x ?? []).map((place, at): [number, number] | null => {
    const [left, top] = [x.at(place), y.at(trace.y?.[at])];
    return left === null || top === null ? null : [left, top];
  });
  let svg = "";
  const path = pathOf(pixels);
  if (trace.fill === "toself" || trace.fill === "tozeroy") {
    const floor = y.at(0);
    const ends = [pixels.at(-1), pixels[0]].map((end) =>
      end && floor !== null ? `L${round(end[0])} ${round(floor)}` : "",
    );
    const closed = trace.fill === "tozeroy" ? `${path}${ends.join("")}Z` : `${path}Z`;
    svg += `<path d="${closed}" fill="${attribute(trace.fillcolor ?? colour)}"/>`;
  }
  const mode = trace.mode ?? "lines";
  if (mode.includes("lines") && trace.line?.width !== 0)
    svg += `<path d="${path}" fill="none" ${stroke(trace, colour)}/>`;
  svg += errorBars(trace, { x, y }, colour);
  for (const [at, pixel] of pixels.entries()) {
    if (!pixel) continue;
    const own = Array.isArray(trace.marker?.color) ? attribute(trace.marker.color[at]) : colour;
    if (mode.includes("markers")) svg += markerSvg(pixel, trace, own);
    const words = Array.isArray(trace.text) ? trace.text[at] : trace.text;
    if (mode.includes("text") && words)
      svg += `<text x="${round(pixel[0])}" y="${round(pixel[1] - 8)}" text-anchor="middle">${escapeXml(String(words))}</text>`;
  }
  return svg;
}

/** A line that joins scatter points with a band to the line of the trace before it. */
export function bandSvg(trace: Trace, before: Trace, axes: Axes, index: number): string {
  const there = scatterPixels(trace, axes);
  const back = scatterPixels(before, axes).reverse();
  return `<path d="${pathOf([...there, ...back])}Z" fill="${attribute(trace.fillcolor ?? colourOf(trace, index))}"/>`;
}

/** A trace of bars, standing or lying, from zero or from their own base. */
export function barSvg(trace: Trace, { x, y }: Axes, slot: Slot): string {
  const lying = trace.orientation === "h";
  const [along, across] = lying ? [x, y] : [y, x];
  const [ends, places] = lying ? [trace.x, trace.y] : [trace.y, trace.x];
  let svg = "";
  const offsets: number[] = [];
  for (const [at, place] of (places ?? []).entries()) {
    const base = each(trace.base, at) ?? 0;
    const length = ends?.[at];
    const [centre, from] = [across.at(place), along.at(base)];
    const to = typeof length === "number" ? along.at(base + length) : null;
    const room = across.step * (each(trace.width, at) ?? 0.8);
    const size = (across.named ? room : Math.min(room, 30)) / slot.bars;
    const offset = (slot.bar - (slot.bars - 1) / 2) * size;
    offsets.push(offset);
    if (centre === null || from === null || to === null) continue;
    const colour = Array.isArray(trace.marker?.color) ? attribute(trace.marker.color[at]) : colourOf(trace, slot.index);
    svg += rectangle(lying, from, to, centre + offset - size / 2, size, colour, trace.opacity);
  }
  const shifted = (scale: Scale): Scale => ({ ...scale, at: (place) => shift(scale.at(place), offsets[0] ?? 0) });
  return svg + errorBars(trace, lying ? { x, y: shifted(y) } : { x: shifted(x), y }, "#333");
}

/** A trace of steps up and down, each from where the one before ended. */
export function waterfallSvg(trace: Trace, axes: Axes, index: number): string {
  let level = 0;
  let svg = "";
  for (const [at, change] of (trace.y ?? []).entries()) {
    if (typeof change !== "number") continue;
    const measure = trace.measure?.[at] ?? "relative";
    const from = measure === "relative" ? level : 0;
    level = measure === "relative" ? level + change : measure === "total" ? level : change;
    const own = measure !== "relative" ? trace.totals : change < 0 ? trace.decreasing : trace.increasing;
    const colour = typeof own?.marker?.color === "string" ? own.marker.color : colourOf(trace, index);
    const bar = { x: [trace.x?.[at] ?? null], y: [level - from], base: [from], marker: { color: colour } };
    svg += barSvg(bar, axes, { index, bar: 0, bars: 1 });
  }
  return svg;
}

/** A field of cells shaded from light to dark with their value. */
export function heatmapSvg(trace: Trace, { x, y }: Axes): string {
  const values = (trace.z ?? []).flat().filter((value): value is number => value !== null && Number.isFinite(value));
  const [low, high] = values.reduce(
    ([least, most], value) => [Math.min(least, value), Math.max(most, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
  const fillOf = (value: number | null | undefined): string | null => {
    if (value === null || value === undefined || !Number.isFinite(value)) return null;
    return shade(high > low ? Math.round(SHADES * ((value - low) / (high - low))) / SHADES : 0.5);
  };
  let svg = "";
  for (const [row, line] of (trace.z ?? []).entries()) {
    const [top, bottom] = edges(trace.y, row, y, trace.z?.length ?? 1);
    for (let from = 0, to = 1; from < line.length; from = to, to = from + 1) {
      const fill = fillOf(line[from]);
      if (fill === null) continue;
      while (to < line.length && fillOf(line[to]) === fill) to++;
      const ends = [...edges(trace.x, from, x, line.length), ...edges(trace.x, to - 1, x, line.length)];
      const left = smallestOf(ends);
      svg += `<rect x="${round(left)}" y="${round(Math.min(top, bottom))}" width="${round(largestOf(ends) - left + 0.5)}" height="${round(Math.abs(bottom - top) + 0.5)}" fill="${fill}"/>`;
    }
  }
  return svg;
}

/** Steps from the lightest to the darkest, finer than the eye tells apart; neighbours of one shade are drawn as one. */
const SHADES = 100;

/** The sign of a trace in the legend, 24 pixels wide. */
export function legendSign(trace: Trace, index: number, left: number, middle: number): string {
  const colour = colourOf(trace, index);
  const mode = trace.mode ?? "lines";
  if (trace.type !== undefined && trace.type !== "scatter") {
    return `<rect x="${left + 4}" y="${middle - 6}" width="16" height="12" fill="${colour}"/>`;
  }
  let svg = "";
  if (trace.fill && trace.fill !== "none") {
    svg += `<rect x="${left}" y="${middle - 5}" width="24" height="10" fill="${attribute(trace.fillcolor ?? colour)}"/>`;
  }
  if (mode.includes("lines") && trace.line?.width !== 0) {
    svg += `<path d="M${left} ${middle}H${left + 24}" fill="none" ${stroke(trace, colour)}/>`;
  }
  if (mode.includes("markers")) svg += markerSvg([left + 12, middle], trace, colour);
  return svg;
}

/** Text that may stand anywhere in XML. plotly's own small marks (`<b>`, `<br>`, …) are left out. */
export function escapeXml(text: string): string {
  return text
    .replace(/<br\s*\/?>/gi, " ")
    .replace(/<\/?(?:b|i|em|strong|sub|sup|extra)>/gi, "")
    .replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`)
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "");
}

/** A colour or a dash list that may stand in an attribute; anything else becomes grey. */
export function attribute(colour: string): string {
  return /^(#[0-9a-f]{3,8}|rgba?\([\d.,% ]+\)|[a-z]+)$/i.test(colour) ? colour : "#888";
}

const DASHES: Readonly<Record<string, string>> = { dash: "9 6", dot: "2.5 4", dashdot: "9 5 2.5 5", longdash: "14 6" };

/** The stroke of a line as attributes. */
export function stroke(options: Pick<Trace, "line">, colour: string): string {
  const dash = ownValue(DASHES, options.line?.dash ?? "");
  const width = options.line?.width ?? 2;
  return `stroke="${colour}" stroke-width="${Number(width)}"${dash ? ` stroke-dasharray="${dash}"` : ""}`;
}

/** A number with at most one digit after the point. */
export function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function scatterPixels(trace: Trace, { x, y }: Axes): ([number, number] | null)[] {
  return (trace.x ?? []).map((place, at) => {
    const [left, top] = [x.at(place), y.at(trace.y?.[at])];
    return left === null || top === null ? null : [left, top];
  });
}

function pathOf(pixels: readonly ([number, number] | null)[]): string {
  let path = "";
  let pen = "M";
  for (const pixel of pixels) {
    if (pixel) path += `${pen}${round(pixel[0])} ${round(pixel[1])}`;
    pen = pixel ? "L" : "M";
  }
  return path;
}

function markerSvg([left, top]: readonly [number, number], trace: Trace, colour: string): string {
  const symbol = trace.marker?.symbol ?? MARKERS[0];
  const size = (trace.marker?.size ?? 7) / 2;
  const open = symbol.endsWith("-open");
  const line = trace.marker?.line;
  const edge = open
    ? ` stroke="${colour}" stroke-width="1.5"`
    : line?.width
      ? ` stroke="${attribute(line.color ?? "#fff")}" stroke-width="${Number(line.width)}"`
      : "";
  const paint = `fill="${open ? "none" : colour}"${edge}`;
  const shape = ownValue(SYMBOLS, symbol.replace(/-open$|-dot$/, ""));
  if (!shape) return `<circle cx="${round(left)}" cy="${round(top)}" r="${round(size)}" ${paint}/>`;
  const points = shape.map(([right, down]) => `${round(left + right * size)},${round(top + down * size)}`);
  return `<polygon points="${points.join(" ")}" ${paint}/>`;
}

const arms = (width: number): [number, number][] => [
  [-width, -1],
  [width, -1],
  [width, -width],
  [1, -width],
  [1, width],
  [width, width],
  [width, 1],
  [-width, 1],
  [-width, width],
  [-1, width],
  [-1, -width],
  [-width, -width],
]; // prettier-ignore

function ring(count: number, inner: number): [number, number][] {
  return Array.from({ length: count }, (_, at): [number, number] => {
    const angle = (2 * Math.PI * at) / count - Math.PI / 2;
    const reach = at % 2 === 0 ? 1.15 : inner;
    return [reach * Math.cos(angle), reach * Math.sin(angle)];
  });
}

/** Corners of the markers, one unit being half their size; a circle has none. */
const SYMBOLS: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
  square: [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ],
  diamond: [
    [0, -1.3],
    [1.3, 0],
    [0, 1.3],
    [-1.3, 0],
  ],
  "triangle-up": [
    [0, -1.2],
    [1.15, 0.8],
    [-1.15, 0.8],
  ],
  "triangle-down": [
    [0, 1.2],
    [1.15, -0.8],
    [-1.15, -0.8],
  ],
  cross: arms(0.4),
  x: arms(0.35).map(([right, down]): [number, number] => [0.8 * (right - down), 0.8 * (right + down)]),
  star: ring(10, 0.5),
  hexagon: ring(6, 1.15),
};

function errorBars(trace: Trace, { x, y }: Axes, colour: string): string {
  let svg = "";
  for (const [bars, upright] of [
    [trace.error_y, true],
    [trace.error_x, false],
  ] as const) {
    if (!bars?.array || bars.visible === false) continue;
    const paint = `stroke="${attribute(bars.color ?? colour)}" stroke-width="1.2" fill="none"`;
    for (const [at, up] of bars.array.entries()) {
      const down = bars.symmetric === false ? (bars.arrayminus?.[at] ?? 0) : up;
      const [px, py] = [trace.x?.[at], trace.y?.[at]];
      const middle = upright ? py : px;
      if (typeof middle !== "number") continue;
      const base = trace.type === "bar" ? (each(trace.base, at) ?? 0) : 0;
      const along = upright ? y : x;
      const [low, high, side] = [
        along.at(base + middle - down),
        along.at(base + middle + up),
        upright ? x.at(px) : y.at(py),
      ];
      if (low === null || high === null || side === null) continue;
      svg += upright
        ? `<path d="M${round(side)} ${round(low)}V${round(high)}M${round(side - 3)} ${round(low)}h6M${round(side - 3)} ${round(high)}h6" ${paint}/>`
        : `<path d="M${round(low)} ${round(side)}H${round(high)}M${round(low)} ${round(side - 3)}v6M${round(high)} ${round(side - 3)}v6" ${paint}/>`;
    }
  }
  return svg;
}

function rectangle(
  lying: boolean,
  from: number,
  to: number,
  side: number,
  size: number,
  colour: string,
  opacity = 1,
): string {
  const [near, length] = [Math.min(from, to), Math.abs(to - from)];
  const [left, top, width, height] = lying ? [near, side, length, size] : [side, near, size, length];
  const thin = opacity === 1 ? "" : ` opacity="${Number(opacity)}"`;
  return `<rect x="${round(left)}" y="${round(top)}" width="${round(width)}" height="${round(height)}" fill="${colour}"${thin}/>`;
}

function edges(places: readonly Place[] | undefined, at: number, scale: Scale, count: number): [number, number] {
  const pixel = (index: number): number => scale.at(places ? places[index] : index) ?? 0;
  const centre = pixel(at);
  if (count === 1) return [centre - scale.step / 2, centre + scale.step / 2];
  const before = at > 0 ? (pixel(at - 1) + centre) / 2 : centre - (pixel(1) - centre) / 2;
  const after = at < count - 1 ? (pixel(at + 1) + centre) / 2 : centre + (centre - pixel(at - 1)) / 2;
  return [before, after];
}

/** From near white to the palette's blue. */
function shade(share: number): string {
  const [red, green, blue] = [
    [247, 0],
    [251, 79],
    [255, 130],
  ].map(([light, dark]) => Math.round(light + (dark - light) * share));
  return `rgb(${red},${green},${blue})`;
}

function each(value: number | readonly number[] | undefined, at: number): number | undefined {
  return typeof value === "number" || value === undefined ? value : value[at];
}

function shift(pixel: number | null, by: number): number | null {
  return pixel === null ? null : pixel + by;
}
