/** A value on an axis: a number or the name of a category. */
export type Place = number | string | null;

interface ErrorBars {
  readonly array?: readonly number[];
  readonly arrayminus?: readonly number[];
  readonly symmetric?: boolean;
  readonly color?: string;
  readonly visible?: boolean;
}

interface Marker {
  readonly color?: string | readonly string[];
  readonly symbol?: string;
  readonly size?: number;
  readonly line?: { readonly color?: string; readonly width?: number };
}

/** The fields of a plotly trace that a still picture draws. */
export interface Trace {
  readonly type?: string;
  readonly mode?: string;
  readonly name?: string;
  readonly x?: readonly Place[];
  readonly y?: readonly Place[];
  readonly z?: readonly (readonly (number | null)[])[];
  readonly text?: string | readonly string[];
  readonly fill?: string;
  readonly fillcolor?: string;
  readonly line?: { readonly color?: string; readonly width?: number; readonly dash?: string };
  readonly marker?: Marker;
  readonly error_x?: ErrorBars;
  readonly error_y?: ErrorBars;
  readonly orientation?: string;
  readonly base?: number | readonly number[];
  readonly width?: number | readonly number[];
  readonly measure?: readonly string[];
  readonly increasing?: { readonly marker?: Marker };
  readonly decreasing?: { readonly marker?: Marker };
  readonly totals?: { readonly marker?: Marker };
  readonly xaxis?: string;
  readonly yaxis?: string;
  readonly showlegend?: boolean;
  readonly visible?: boolean | string;
  readonly opacity?: number;
}

/** The fields of a plotly axis that a still picture draws. */
export interface AxisLayout {
  readonly title?: { readonly text?: string };
  readonly type?: string;
  readonly range?: readonly [number, number];
  readonly rangemode?: string;
  readonly autorange?: boolean | string;
  readonly domain?: readonly [number, number];
  readonly anchor?: string;
  readonly categoryarray?: readonly string[];
  /** ticks that a figure names itself */
  readonly tickvals?: readonly number[];
  readonly ticktext?: readonly string[];
}

/** A line or a box that a layout adds. */
export interface Shape {
  readonly type?: string;
  readonly x0?: Place;
  readonly x1?: Place;
  readonly y0?: Place;
  readonly y1?: Place;
  readonly xref?: string;
  readonly yref?: string;
  readonly fillcolor?: string;
  readonly line?: { readonly color?: string; readonly width?: number; readonly dash?: string };
}
