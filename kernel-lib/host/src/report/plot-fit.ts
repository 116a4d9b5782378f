/** A plotly figure as it is drawn. */
export interface DrawnFigure {
  readonly data: readonly unknown[];
  readonly layout: Readonly<Record<string, unknown>>;
  /** of the whole figure, in pixels */
  readonly heightPx: number;
}

/** Where a figure is drawn. */
export interface PlotPlace {
  readonly widthPx: number;
  readonly isDark: boolean;
}

/**
 * A plotly figure for the place where it is drawn: titles and names in as many lines as they need, panels below each other where
 * two beside each other would be too narrow, and the ink of a dark page on a dark page.
 */
export function plotFit(
  figure: { readonly data: readonly unknown[]; readonly layout?: Readonly<Record<string, unknown>> | null },
  place: PlotPlace,
): DrawnFigure {
  // biome-ignore lint/suspicious/noExplicitAny: plotly's own objects, read field by field
  type Loose = any;
  const { widthPx, isDark } = place;
  const NARROW_PX = 560;
  const PANEL_PX = 220;
  const GAP_PX = 110;
  const EM = 0.55; // width of a letter, as a share of its size
  const DARK: Readonly<Record<string, string>> = {
    "#fff": "#242526",
    "#ffffff": "#242526",
    "#000": "#e8e6e1",
    "#000000": "#e8e6e1",
    "#222": "#e8e6e1",
    "#444": "#a9a59c",
    "#555": "#c4c0b8",
    "#777": "#a9a59c",
    "#e5e5e5": "#3d3e40",
    "#0072b2": "#3f9ad6",
  };
  const isNarrow = widthPx < NARROW_PX;
  const wrapped = (text: string, roomPx: number, sizePx: number): string => {
    const most = Math.max(6, Math.floor(roomPx / (EM * sizePx)));
    return text
      .split("<br>")
      .map((line) => {
        const lines: string[] = [];
        for (const word of line.split(" ")) {
          const last = lines.length - 1;
          if (last >= 0 && lines[last].length + 1 + word.length <= most) lines[last] += ` ${word}`;
          else lines.push(word);
        }
        return lines.join("<br>");
      })
      .join("<br>");
  };
  const linesIn = (text: string): number => text.split("<br>").length;
  const inked = (value: Loose): Loose => {
    if (typeof value === "string") {
      if (Object.hasOwn(DARK, value)) return DARK[value];
      return value.startsWith("rgba(0,0,0,")
        ? value.replace("rgba(0,0,0,", "rgba(255,255,255,")
        : value.replace("rgba(0,114,178,", "rgba(63,154,214,");
    }
    if (Array.isArray(value)) return value.map(inked);
    if (value === null || typeof value !== "object") return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inked(one)]));
  };
  const plain = { data: figure.data, layout: figure.layout ?? {} };
  const { data, layout }: { data: Loose[]; layout: Loose } = JSON.parse(JSON.stringify(isDark ? inked(plain) : plain));
  if (isDark) {
    layout.paper_bgcolor ??= DARK["#fff"];
    layout.plot_bgcolor ??= DARK["#fff"];
    layout.font = { color: DARK["#222"], ...layout.font };
  }
  delete layout.width;
  layout.autosize = true;
  const margin = { t: 48, r: 24, b: 64, l: 64, ...layout.margin, ...(isNarrow && { l: 48, r: 12 }) };
  let heightPx: number = typeof layout.height === "number" ? layout.height : 440;

  // a title in lines, with room made for them
  const titleText = typeof layout.title === "string" ? layout.title : layout.title?.text;
  if (typeof titleText === "string" && titleText !== "") {
    const size = isNarrow ? 13 : 16;
    const text = wrapped(titleText, widthPx - 24, size);
    const morePx = (linesIn(text) - 1) * 1.3 * size;
    layout.title = { ...(typeof layout.title === "object" ? layout.title : {}), text, font: { size } };
    margin.t += morePx;
    heightPx += morePx;
  }

  // panels beside each other: below each other where it is narrow
  const ends = Object.keys(layout)
    .filter((key) => /^xaxis\d*$/.test(key) && layout[key.replace("x", "y")]?.anchor === key.replace("axis", ""))
    .map((key) => key.slice("xaxis".length))
    .sort((one, other) => Number(one || 1) - Number(other || 1));
  const isGrid = ends.length > 1 && ends.some((end) => (layout[`xaxis${end}`].domain ?? [0])[0] > 0);
  if (isNarrow && isGrid) {
    const wholePx = ends.length * PANEL_PX + (ends.length - 1) * GAP_PX;
    ends.forEach((end, at) => {
      const top = 1 - (at * (PANEL_PX + GAP_PX)) / wholePx;
      layout[`xaxis${end}`].domain = [0, 1];
      layout[`yaxis${end}`].domain = [Math.max(0, top - PANEL_PX / wholePx), top];
    });
    heightPx = margin.t + margin.b + wholePx;
  }

  // names on the upright axis, and axis titles, in lines
  const namesRoomPx = 0.36 * widthPx;
  const namesOn = (axis: string): string[] => {
    const values = data
      .filter((trace) => (trace.yaxis ?? "y") === axis && Array.isArray(trace.y))
      .flatMap(({ y }) => y);
    return [...new Set<string>(values.filter((one) => typeof one === "string"))];
  };
  const isLong = (name: string): boolean => EM * 13 * name.length > namesRoomPx;
  const hasLong =
    isNarrow && data.some(({ y }) => Array.isArray(y) && y.some((one) => typeof one === "string" && isLong(one)));
  for (const key of Object.keys(layout).filter((one) => /^[xy]axis\d*$/.test(one))) {
    const axis = layout[key];
    const domain: number[] = axis.domain ?? [0, 1];
    const isUpright = key.startsWith("y");
    const text = typeof axis.title === "string" ? axis.title : axis.title?.text;
    const size = axis.title?.font?.size ?? 13;
    const plotPx = isUpright
      ? (heightPx - margin.t - margin.b) * (domain[1] - domain[0])
      : (widthPx - margin.l - margin.r - (hasLong ? namesRoomPx : 0)) * (domain[1] - domain[0]);
    if (typeof text === "string" && text !== "")
      axis.title = { ...(typeof axis.title === "object" ? axis.title : {}), text: wrapped(text, plotPx, size) };
    const names = isUpright && hasLong ? namesOn(key.replace("axis", "")) : [];
    if (names.some(isLong) && axis.tickvals === undefined)
      Object.assign(axis, {
        tickvals: names,
        ticktext: names.map((name) => wrapped(name, namesRoomPx, 11)),
        tickfont: { size: 11 },
      });
  }

  // what is written into a panel, above it
  for (const note of layout.annotations ?? [])
    if (isNarrow && typeof note.text === "string") {
      const size = Math.min(13, note.font?.size ?? 13);
      note.font = { ...note.font, size };
      note.text = wrapped(note.text, widthPx - margin.l - margin.r, size);
    }
  layout.margin = margin;
  layout.height = heightPx;
  return { data, layout, heightPx };
}
