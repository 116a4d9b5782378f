import type { Figure } from "./figure";
import { houseLayout } from "./layout";
import { PANEL_NAME } from "./svg/panel";

/** One figure among several that are shown together. */
export interface NamedFigure {
  /** what tells it from the others: a variant's name */
  readonly name: string;
  readonly figure: Figure;
}

/** Names on the upright axis leave no room for a second column. */
const COLUMNS = { numbers: 2, names: 1 };
/** Pixels of a panel, of the gap between two rows (axis title below, name above), and of what is around them all. */
const PANEL_PX = 220;
const GAP_PX = 100;
const MARGIN = { t: 76, r: 24, b: 120, l: 64 };
/** Share of the width between two columns. */
const GUTTER = 0.12;

type Axis = Readonly<Record<string, unknown>>;
type Reference = { readonly xref?: string; readonly yref?: string };

/**
 * Several figures of one kind as one: each in a panel of its own under its name, two beside each other, under one legend. A
 * single figure stays as it is. What moves a figure (sliders, menus) and what it holds unseen is left out; what several say in
 * words, such as a caution, is said once, at the end.
 *
 * @param panels figures with one pair of axes each, at least one
 * @param title of the whole
 * @example
 * const figure = { kind: "figure" as const, data: [{ type: "scatter", name: "crisp", x: [1], y: [2] }], layout: {}, summary: "2 min at 1 mm. Probe." };
 * const other = { ...figure, summary: "3 min at 1 mm. Probe." };
 * const both = smallMultiples([{ name: "oats", figure }, { name: "rye", figure: other }], "Crisp time");
 * both.data.length; // → 2
 * both.summary; // → "Crisp time. oats: 2 min at 1 mm. rye: 3 min at 1 mm. Probe."
 */
export function smallMultiples(panels: readonly NamedFigure[], title: string): Figure {
  if (panels.length === 1) return panels[0].figure;
  const hasNames = panels.some(({ figure }) =>
    (figure.data as { y?: readonly unknown[] }[]).some(({ y }) => typeof y?.[0] === "string"),
  );
  const columns = hasNames ? COLUMNS.names : COLUMNS.numbers;
  const rows = Math.ceil(panels.length / columns);
  const inLegend = new Set<string>();
  const placed = panels.map(({ name, figure }, at) => placedIn(figure, { name, at, rows, columns }, inLegend));
  return {
    kind: "figure",
    data: placed.flatMap((panel) => panel.data),
    layout: houseLayout({
      title,
      xTitle: "",
      yTitle: "",
      more: {
        ...Object.assign({}, ...placed.map((panel) => panel.axes)),
        shapes: placed.flatMap((panel) => panel.shapes),
        annotations: placed.flatMap((panel) => panel.annotations),
        ...barmodeOf(panels),
        hovermode: "closest",
        margin: MARGIN,
        height: MARGIN.t + MARGIN.b + rows * PANEL_PX + (rows - 1) * GAP_PX,
      },
    }),
    summary: `${title}. ${inWords(panels)}`,
  };
}

interface Place {
  readonly name: string;
  readonly at: number;
  readonly rows: number;
  readonly columns: number;
}

function placedIn(
  figure: Figure,
  { name, at, rows, columns }: Place,
  inLegend: Set<string>,
): { data: object[]; axes: Record<string, Axis>; shapes: object[]; annotations: object[] } {
  const end = at === 0 ? "" : String(at + 1);
  const [x, y] = [`x${end}`, `y${end}`];
  const width = (1 - GUTTER * (columns - 1)) / columns;
  const left = (at % columns) * (width + GUTTER);
  const wholePx = rows * PANEL_PX + (rows - 1) * GAP_PX;
  const top = 1 - (Math.floor(at / columns) * (PANEL_PX + GAP_PX)) / wholePx;
  const axisOf = (which: "xaxis" | "yaxis"): Axis => (figure.layout[which] ?? {}) as Axis;
  const titleOf = (axis: Axis): string => ((axis.title ?? {}) as { text?: string }).text ?? "";
  const own = { automargin: true, zeroline: false, gridcolor: "#e5e5e5", linecolor: "#444", ticks: "outside" };
  const moved = (one: Reference): object => ({ ...one, xref: along(one.xref, x), yref: along(one.yref, y) });
  return {
    data: figure.data
      .filter((trace) => (trace as { visible?: boolean }).visible !== false)
      .map((trace) => ({
        ...trace,
        xaxis: x,
        yaxis: y,
        ...legendOf(trace, inLegend),
        ...(at > 0 && "colorscale" in trace && { showscale: false }),
      })),
    axes: {
      [`xaxis${end}`]: {
        ...own,
        ...axisOf("xaxis"),
        title: { text: titleOf(axisOf("xaxis")), font: { size: 12 } },
        domain: [left, left + width],
        anchor: y,
      },
      [`yaxis${end}`]: {
        ...own,
        ...axisOf("yaxis"),
        title: { text: titleOf(axisOf("yaxis")), font: { size: 12 } },
        domain: [Math.max(0, top - PANEL_PX / wholePx), top],
        anchor: x,
      },
    },
    shapes: ((figure.layout.shapes ?? []) as Reference[]).map(moved),
    annotations: [panelName(name, x, y), ...((figure.layout.annotations ?? []) as Reference[]).map(moved)],
  };
}

/** Above the left end of the panel; a still picture draws the annotations of this name. */
function panelName(name: string, x: string, y: string): object {
  return {
    name: PANEL_NAME,
    text: name,
    xref: `${x} domain`,
    yref: `${y} domain`,
    x: 0,
    y: 1,
    xanchor: "left",
    yanchor: "bottom",
    showarrow: false,
    font: { size: 14 },
  };
}

function inWords(panels: readonly NamedFigure[]): string {
  const said = panels.map(({ name, figure }) => ({ name, sentences: figure.summary.split(/(?<=\.) (?=[A-Z])/) }));
  const times = new Map<string, number>();
  for (const { sentences } of said) for (const one of new Set(sentences)) times.set(one, (times.get(one) ?? 0) + 1);
  const isOwn = (sentence: string): boolean => times.get(sentence) === 1;
  const own = said.flatMap(({ name, sentences }) => {
    const words = sentences.filter(isOwn).join(" ");
    return words === "" ? [] : [`${name}: ${words}`];
  });
  return [...own, ...[...times.keys()].filter((sentence) => !isOwn(sentence))].join(" ");
}

/** An axis or the paper of a figure, as an axis or its length in a panel. */
function along(reference: string | undefined, axis: string): string {
  return reference === "paper" || reference?.endsWith(" domain") ? `${axis} domain` : axis;
}

/** A name stands in the legend once, and shows and hides its traces in all panels. */
function legendOf(trace: object, inLegend: Set<string>): object {
  const { name, showlegend } = trace as { name?: string; showlegend?: boolean };
  if (name === undefined || showlegend === false) return { showlegend: false, ...(name && { legendgroup: name }) };
  const isFirst = !inLegend.has(name);
  inLegend.add(name);
  return { showlegend: isFirst, legendgroup: name };
}

function barmodeOf(panels: readonly NamedFigure[]): object {
  const { barmode } = panels[0]?.figure.layout ?? {};
  return barmode === undefined ? {} : { barmode };
}
