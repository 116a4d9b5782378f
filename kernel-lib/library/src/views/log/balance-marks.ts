import { largestOf, smallestOf } from "../../statistics/extremes";
import { MARKERS, PALETTE } from "../figure/palette";

/** One trial that two ways of measuring tell the same of. */
export interface Balanced {
  readonly trialId: string;
  /** name of its product */
  readonly product: string;
  readonly x: number;
  readonly y: number;
  /** half of the 95 % interval of y; null where it is not known */
  readonly half: number | null;
  readonly isOdd: boolean;
}

/** From where to where lines are drawn: a tenth beyond the points of both axes. */
export function balanceEnds(points: readonly Balanced[]): readonly [number, number] {
  const all = points.flatMap(({ x, y }) => [x, y]);
  return [0.9 * smallestOf(all), 1.1 * largestOf(all)];
}

/** A mark a trial by product, the odd ones ringed and named, and the line on which both ways agree. */
export function balanceMarks(points: readonly Balanced[], unit: "mm" | "g"): object[] {
  const products = [...new Set(points.map(({ product }) => product))];
  const ends = balanceEnds(points);
  const odd = points.filter(({ isOdd }) => isOdd);
  return [
    {
      type: "scatter",
      mode: "lines",
      name: "both agree",
      x: ends,
      y: ends,
      line: { color: "#777", dash: "dash", width: 1.5 },
      hoverinfo: "skip",
    },
    ...products.map((product, at) => {
      const own = points.filter((point) => point.product === product);
      const color = PALETTE[at % PALETTE.length];
      return {
        type: "scatter",
        mode: "markers",
        name: product,
        x: own.map(({ x }) => x),
        y: own.map(({ y }) => y),
        text: own.map(({ trialId }) => trialId),
        ...(own.some(({ half }) => half !== null) && {
          error_y: { type: "data", array: own.map(({ half }) => half ?? 0), color, thickness: 1, width: 0 },
        }),
        marker: { color, symbol: MARKERS[at % MARKERS.length], size: 8 },
        hovertemplate: `%{text}: %{x:.1f} ${unit}, %{y:.1f} ${unit}<extra></extra>`,
      };
    }),
    ...(odd.length === 0
      ? []
      : [
          {
            type: "scatter",
            mode: "markers+text",
            name: "to look at",
            x: odd.map(({ x }) => x),
            y: odd.map(({ y }) => y),
            text: odd.map(({ trialId }) => trialId),
            textposition: "top center",
            marker: { color: "#000", symbol: "circle-open", size: 15 },
            hoverinfo: "skip",
          },
        ]),
  ];
}

/** How the points agree, in a sentence. */
export function balanceWords(points: readonly Balanced[]): string {
  const odd = points.filter(({ isOdd }) => isOdd);
  const count = points.length === 1 ? "1 trial tells" : `${points.length} trials tell`;
  if (odd.length === 0) return `${count} both, and none disagrees by more than is usual.`;
  return `${count} both; to look at: ${odd.map(({ trialId, x, y }) => `${trialId} (${signed(100 * (y / x - 1))} %)`).join(", ")}.`;
}

function signed(value: number): string {
  return `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(0)}`;
}
