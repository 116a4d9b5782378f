import type { DayPlan } from "../../advice/day/batch-day";
import type { DayStep } from "../../advice/day/day-step";
import { clockText } from "../../units/clock-text";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE, translucent } from "../figure/palette";
import { stepText } from "./step-text";

interface Place {
  readonly name: string;
  readonly holds: (step: DayStep) => boolean;
}

/** Where a step takes place, in the order of the colours. */
const PLACES: readonly Place[] = [
  { name: "by hand", holds: ({ hands }) => hands === "all" },
  { name: "in the freezer", holds: ({ kind }) => kind === "freeze" || kind === "freeze pieces" },
  { name: "in the oven or basket", holds: ({ kind }) => kind === "cook" },
  { name: "on the counter", holds: ({ kind }) => kind === "temper" },
];

/**
 * A batch day as bars over the time of day: a row for each pan, a colour for each place, pale where nobody need be there.
 *
 * @example
 * const plan = batchDay({ kitchen: loadKitchen(), batches: [{ variantId: "beet-lentil" }] });
 * dayFigure(plan).layout.barmode; // → "overlay"
 */
export function dayFigure(plan: DayPlan): Figure {
  const { away, endMin, startMin, steps, units } = plan;
  const rowOf = ({ pan, variantName }: DayStep): string =>
    pan === null || panCount(steps, variantName) === 1 ? variantName : `${variantName} ${pan}`;
  const rows = [...new Set(steps.map(rowOf))];
  const hour = (min: number): number => min / 60;
  const data = PLACES.flatMap(({ name, holds }, at) => {
    const own = steps.filter(holds);
    if (own.length === 0) return [];
    return [
      {
        type: "bar",
        orientation: "h",
        name,
        y: own.map(rowOf),
        x: own.map((step) => hour(step.endMin - step.startMin)),
        base: own.map((step) => hour(step.startMin)),
        text: own.map(() => ""),
        customdata: own.map(
          (step) => `${stepText(step)}, ${clockText(step.startMin, units)} to ${clockText(step.endMin, units)}`,
        ),
        hovertemplate: "%{customdata}<extra></extra>",
        marker: { color: PALETTE[at], line: { color: "#fff", width: 1 } },
      },
    ];
  });
  const first = Math.floor(hour(startMin));
  const last = Math.ceil(hour(endMin));
  const every = last - first > 30 ? 6 : last - first > 14 ? 2 : 1;
  const ticks = Array.from({ length: Math.floor((last - first) / every) + 1 }, (_, at) => first + at * every);
  const layout = houseLayout({ title: "The batch day", xTitle: "time of day", yTitle: "" });
  const leave = away.map(({ from, until }) => `${clockText(from, units)} to ${clockText(until, units)}`);
  return {
    kind: "figure",
    data,
    layout: {
      ...layout,
      barmode: "overlay",
      height: 180 + 44 * rows.length,
      xaxis: {
        ...(layout.xaxis as object),
        range: [first, last],
        tickmode: "array",
        tickvals: ticks,
        ticktext: ticks.map((at) =>
          clockText(60 * at, units)
            .replace(/ on day (\d+)$/, ", day $1")
            .replace(":00 ", " "),
        ),
      },
      yaxis: {
        ...(layout.yaxis as object),
        type: "category",
        autorange: "reversed",
        categoryarray: rows,
        categoryorder: "array",
      },
      shapes: away.map(({ from, until }) => ({
        type: "rect",
        xref: "x",
        yref: "paper",
        x0: hour(from),
        x1: hour(until),
        y0: 0,
        y1: 1,
        fillcolor: translucent("#000000", 0.07),
        line: { width: 0 },
        layer: "below",
      })),
    },
    summary: `${steps.length} steps from ${clockText(startMin, units)} to ${clockText(endMin, units)}; ${leave.length === 0 ? "hands are wanted throughout" : `no hands are wanted from ${leave.join(", from ")}`}.`,
  };
}

function panCount(steps: readonly DayStep[], variantName: string): number {
  return new Set(steps.flatMap((step) => (step.variantName === variantName && step.pan !== null ? [step.pan] : [])))
    .size;
}
