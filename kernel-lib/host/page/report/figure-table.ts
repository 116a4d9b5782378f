import type { Figure } from "../../src/report/figure-of";
import { type FigureTrace, figureParts, objectOf, plainWords, titleWords } from "../../src/report/figure-parts";

/** A figure's data: a heading a column, a row a point. */
export interface FigureTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Fields of a trace that may hold a value a point, and what they are called where no axis has a title for them. */
const VALUES: Readonly<Record<string, string>> = {
  labels: "label",
  lat: "latitude",
  lon: "longitude",
  r: "radius",
  theta: "angle",
  values: "value",
};

/**
 * The data that a plotly figure draws, a row a point: its panel, its trace, what it is on each axis (under the axis' own title,
 * with its unit), the ends of its error bar or of its bar, and what is written at it. Numbers have at most seven digits.
 */
export function figureTable(figure: Figure): FigureTable {
  const { panels, traces } = figureParts(figure);
  const points = traces.flatMap((trace) => {
    const panel = panels.get(trace.panel);
    const before = { panel: panel?.name ?? "", series: trace.name };
    const [x, y] = [panel?.xTitle || "x", panel?.yTitle || "y"];
    const drawn = Array.isArray(trace.fields.z)
      ? gridPoints(trace, x, y)
      : tracePoints(trace, x, y === x ? `${y}, y` : y);
    return drawn.map((point) => ({ ...before, ...point }));
  });
  const headings = new Set(points.flatMap((point) => Object.keys(point)));
  const all: Record<string, string>[] = points;
  const filled = [...headings].filter((heading) => all.some((point) => (point[heading] ?? "") !== ""));
  // what is written at a point stands behind what it measures
  const order = [...filled.filter((one) => one !== NOTE), ...filled.filter((one) => one === NOTE)];
  return { headings: order, rows: all.map((point) => order.map((heading) => point[heading] ?? "")) };
}

const NOTE = "note";

function tracePoints({ fields }: FigureTrace, xTitle: string, yTitle: string): Record<string, string>[] {
  const titles: Readonly<Record<string, string>> = { x: xTitle, y: yTitle, ...VALUES };
  const kept = Object.keys(titles).filter((key) => Array.isArray(fields[key]));
  const arrays = kept.map((key) => fields[key] as unknown[]);
  const count = arrays.reduce((most, { length }) => Math.max(most, length), 0);
  const notes = [fields.hovertext, fields.text].find((one) => Array.isArray(one)) as unknown[] | undefined;
  return Array.from({ length: count }, (_, at) => {
    const point: Record<string, string> = {};
    for (const [index, key] of kept.entries()) {
      point[titles[key]] = cellText(arrays[index][at]);
      const ends = key === "x" || key === "y" ? endsOf(fields, key, at) : null;
      if (ends) [point[`${titles[key]}, from`], point[`${titles[key]}, to`]] = ends.map(cellText);
    }
    if (notes !== undefined) point[NOTE] = cellText(notes[at]);
    return point;
  });
}

/** The ends of a point's error bar, or of a bar that does not begin at zero; null where it has none. */
function endsOf(fields: Readonly<Record<string, unknown>>, key: "x" | "y", at: number): [number, number] | null {
  const value = (fields[key] as unknown[])[at];
  if (typeof value !== "number") return null;
  const isAlong = (fields.orientation === "h") === (key === "x");
  const base = Array.isArray(fields.base) ? fields.base[at] : fields.base;
  if (typeof base === "number" && isAlong) return [base, base + value];
  const error = objectOf(fields[`error_${key}`]);
  const read = (of: unknown): unknown => (Array.isArray(of) ? of[at] : undefined);
  const more = error.type === "constant" ? error.value : read(error.array);
  const less = error.type === "constant" ? (error.valueminus ?? more) : (read(error.arrayminus) ?? more);
  return typeof more === "number" && typeof less === "number" ? [value - less, value + more] : null;
}

/** The cells of a map: where they lie on both axes, and what they hold. */
function gridPoints({ fields }: FigureTrace, xTitle: string, yTitle: string): Record<string, string>[] {
  const height = titleWords(objectOf(fields.colorbar).title) || "value";
  const place = (axis: unknown, at: number): unknown => (Array.isArray(axis) ? axis[at] : at);
  return (fields.z as unknown[]).flatMap((line, row) =>
    !Array.isArray(line)
      ? []
      : line.map((value, column) => ({
          [xTitle]: cellText(place(fields.x, column)),
          [yTitle]: cellText(place(fields.y, row)),
          [height]: cellText(value),
        })),
  );
}

function cellText(value: unknown): string {
  if (typeof value === "number") return Number.isFinite(value) ? String(Number(value.toPrecision(7))) : "";
  return typeof value === "boolean" ? String(value) : plainWords(value);
}
