/** The words and ranges that one figure adds to the house layout. */
export interface LayoutOptions {
  readonly title: string;
  /** with its unit: `"slab thickness (mm)"` */
  readonly xTitle: string;
  /** with its unit: `"crisp time (min)"` */
  readonly yTitle: string;
  /** further plotly layout fields; these win */
  readonly more?: Readonly<Record<string, unknown>>;
}

/** The layout that every figure starts from: white ground, legend below, room for axis titles, readable in print. */
export function houseLayout(options: LayoutOptions): Record<string, unknown> {
  const axis = (title: string): object => ({
    title: { text: title },
    automargin: true,
    zeroline: false,
    gridcolor: "#e5e5e5",
    linecolor: "#444",
    ticks: "outside",
  });
  return {
    title: { text: options.title, font: { size: 16 } },
    font: { family: "system-ui, sans-serif", size: 13, color: "#222" },
    paper_bgcolor: "#fff",
    plot_bgcolor: "#fff",
    xaxis: axis(options.xTitle),
    yaxis: axis(options.yTitle),
    legend: { orientation: "h", yref: "container", y: 0, yanchor: "bottom", x: 0.5, xanchor: "center" },
    margin: { t: 48, r: 24, b: 64, l: 64 },
    ...options.more,
  };
}
