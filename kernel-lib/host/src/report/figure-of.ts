/** A plotly figure as far as the report looks into it. */
export interface Figure {
  readonly data: readonly unknown[];
  readonly layout?: Readonly<Record<string, unknown>> | null;
}

const PLOTLY_MIME = "application/vnd.plotly.v1+json";

/** The kinds of trace that plotly draws with WebGL programs, which it writes as text and evaluates. */
const EVALUATED: ReadonlySet<unknown> = new Set(["parcoords", "scattergl", "scatterpolargl", "splom"]);

/** The plotly figure that a MIME bundle holds: an object with a list of traces; null where it holds none. */
export function figureOf(data: Readonly<Record<string, unknown>>): Figure | null {
  const figure = Object.hasOwn(data, PLOTLY_MIME) ? (data[PLOTLY_MIME] as Figure | null) : null;
  return Array.isArray(figure?.data) ? figure : null;
}

/** Whether plotly must evaluate text as code to draw a figure. */
export function isEvaluated(figure: Figure): boolean {
  return figure.data.some((trace) => EVALUATED.has((trace as { type?: unknown } | null)?.type));
}
