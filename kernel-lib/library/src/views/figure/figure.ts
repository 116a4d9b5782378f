/**
 * A plotly figure as plain data: what `Plotly.newPlot(div, figure.data, figure.layout)` takes, and one sentence that
 * says what it shows, for a terminal, a screen reader and a viewer that cannot draw it.
 */
export interface Figure {
  readonly kind: "figure";
  readonly data: readonly object[];
  readonly layout: Readonly<Record<string, unknown>>;
  /** the finding in words, with its numbers and units */
  readonly summary: string;
}
