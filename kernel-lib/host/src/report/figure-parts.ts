import type { Figure } from "./figure-of";

/** A trace of a figure, as far as words and a table of it go. */
export interface FigureTrace {
  readonly type: string;
  readonly name: string;
  /** the panel that it is drawn in: its x and y axis, `"x2y2"` */
  readonly panel: string;
  readonly fields: Readonly<Record<string, unknown>>;
}

/** A pair of axes of a figure. */
export interface FigurePanel {
  /** what is written above it; empty */
  readonly name: string;
  readonly xTitle: string;
  readonly yTitle: string;
}

/** A plotly figure taken apart: everything is text or a trace's own field, whatever the figure's JSON holds. */
export interface FigureParts {
  readonly title: string;
  /** by the ends of their axes' names, as traces name them */
  readonly panels: ReadonlyMap<string, FigurePanel>;
  readonly traces: readonly FigureTrace[];
}

/** Parts a plotly figure into its title, its panels and its traces that are seen. */
export function figureParts(figure: Figure): FigureParts {
  const layout = objectOf(figure.layout);
  const traces = figure.data
    .map(objectOf)
    .filter(({ visible }) => visible !== false && visible !== "legendonly")
    .map((fields) => ({
      type: typeof fields.type === "string" ? fields.type : "scatter",
      name: plainWords(fields.name),
      panel: `${axisOf(fields.xaxis, "x")}${axisOf(fields.yaxis, "y")}`,
      fields,
    }));
  const panels = new Map<string, FigurePanel>();
  for (const { panel } of traces) {
    const [x, y] = [panel.slice(0, panel.indexOf("y")), panel.slice(panel.indexOf("y"))];
    panels.set(panel, {
      name: panelName(layout, x, y),
      xTitle: titleWords(objectOf(layout[x.replace("x", "xaxis")]).title),
      yTitle: titleWords(objectOf(layout[y.replace("y", "yaxis")]).title),
    });
  }
  return { title: titleWords(layout.title), panels, traces };
}

/** A title as plotly takes it, text or an object that holds it, as plain words. */
export function titleWords(title: unknown): string {
  return plainWords(typeof title === "string" ? title : objectOf(title).text);
}

/** Text of a figure without plotly's tags for lines and weights; empty for what is no text. */
export function plainWords(text: unknown): string {
  if (typeof text !== "string") return "";
  return text
    .replace(/<br\s*\/?>/gi, " ")
    .replace(/<\/?(?:b|i|em|sub|sup|span|u|s|a)\b[^<>]*>/gi, "")
    .replace(/\s+/g, " ")
    .trim();
}

/** A value that can be asked for its fields, whatever it is. */
export function objectOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
}

function axisOf(value: unknown, letter: "x" | "y"): string {
  return typeof value === "string" && /^[xy]\d{0,3}$/.test(value) && value.startsWith(letter) ? value : letter;
}

/** What stands above a panel: an annotation that is placed by the panel's own frame. */
function panelName(layout: Readonly<Record<string, unknown>>, x: string, y: string): string {
  const notes = Array.isArray(layout.annotations) ? layout.annotations.map(objectOf) : [];
  const above = notes.find(({ xref, yref, y: at }) => xref === `${x} domain` && yref === `${y} domain` && at === 1);
  return plainWords(above?.text);
}
