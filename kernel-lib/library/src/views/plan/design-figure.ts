import { fail } from "../../check/check";
import { counted } from "../../check/counted";
import { type CodedPoint, checkFactors, type Factor } from "../../plan/factor/factor";
import type { KitchenUnits } from "../../units/unit-table";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE, translucent } from "../figure/palette";

/** What `designFigure` draws. */
export interface DesignFigureOptions {
  /** the two factors, with their units in their names: `"setpoint (°C)"` */
  readonly factors: readonly [Factor, Factor];
  /** runs to make, coded units */
  readonly points: readonly CodedPoint[];
  /** runs that were made, coded units; none unless given */
  readonly kept?: readonly CodedPoint[];
  /** of the kitchen; axes in mm, °C and g are shown in them; metric unless given */
  readonly units?: KitchenUnits;
}

/**
 * A plan in the region of its two factors: what was run already, and what should be run beside it; runs at one place as one mark with
 * their number.
 *
 * @example
 * const factors = [{ name: "setpoint (°C)", low: 180, high: 200 }, { name: "slab thickness (mm)", low: 8, high: 12 }] as const;
 * designFigure({ factors, points: [[-1, 1], [1, 1]], kept: [[0, 0]] }).data.length; // → 2
 */
export function designFigure({ factors, points, kept = [], units = "metric" }: DesignFigureOptions): Figure {
  const where = "designFigure";
  checkFactors(where, factors);
  const uneven = [...points, ...kept].find((point) => point.length !== 2);
  if (uneven !== undefined) fail(`${where}: points`, "must hold two numbers each", uneven);
  const real = (at: number, coded: number): number =>
    (factors[at].low + factors[at].high) / 2 + (coded * (factors[at].high - factors[at].low)) / 2;
  const [across, up] = factors;
  const traceOf = (name: string, list: readonly CodedPoint[], marker: Readonly<Record<string, unknown>>): object => {
    const places = placesOf(list);
    return {
      type: "scatter",
      mode: "markers+text",
      name,
      x: places.map(({ point }) => real(0, point[0])),
      y: places.map(({ point }) => real(1, point[1])),
      text: places.map(({ count }) => (count === 1 ? "" : `×${count}`)),
      textposition: "top right",
      marker,
      hovertemplate: `${name}: %{x:.1f}, %{y:.1f}<extra></extra>`,
    };
  };
  const figure: Figure = {
    kind: "figure",
    data: [
      traceOf("run already", kept, { symbol: MARKERS[0], size: 9, color: translucent(PALETTE[6], 0.5) }),
      traceOf("to be run", points, { symbol: MARKERS[2], size: 13, color: PALETTE[1] }),
    ],
    layout: houseLayout({
      title: "Where the runs lie",
      xTitle: across.name,
      yTitle: up.name,
      more: {
        hovermode: "closest",
        shapes: [
          {
            type: "rect",
            xref: "x",
            yref: "y",
            x0: across.low,
            x1: across.high,
            y0: up.low,
            y1: up.high,
            line: { color: "#888", width: 1, dash: "dot" },
          },
        ],
      },
    }),
    summary: `${counted(points.length, "run")} to make beside ${kept.length} in the log, over ${across.name} and ${up.name}.`,
  };
  return figureIn(figure, units);
}

/** Points that lie within a thousandth of each other, as one with their number. */
function placesOf(points: readonly CodedPoint[]): readonly { readonly point: CodedPoint; readonly count: number }[] {
  const places = new Map<string, { readonly point: CodedPoint; readonly count: number }>();
  for (const point of points) {
    const key = point.map((value) => Math.round(1000 * value)).join();
    const known = places.get(key);
    places.set(key, { point: known?.point ?? point, count: (known?.count ?? 0) + 1 });
  }
  return [...places.values()];
}
