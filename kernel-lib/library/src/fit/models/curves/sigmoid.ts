import { largestOf, smallestOf } from "../../../statistics/extremes";
import type { CurveModel } from "../curve-model";
import { lineThrough } from "./line-through";

/** y = bottom + (top − bottom)/(1 + e^((middle − x)/width)); fix `bottom` at 0 for the three-parameter form. */
export const logistic: CurveModel<"bottom" | "top" | "middle" | "width"> = {
  name: "logistic",
  equation: "y = bottom + (top - bottom)/(1 + e^((middle - x)/width))",
  parameters: { bottom: {}, top: {}, middle: {}, width: {} },
  evaluate: (x, { bottom, top, middle, width }) => bottom + (top - bottom) / (1 + Math.exp((middle - x) / width)),
  gradient: (x, { bottom, top, middle, width }) => {
    const share = 1 / (1 + Math.exp((middle - x) / width));
    const slope = ((top - bottom) * share * (1 - share)) / width;
    return [1 - share, share, -slope, (slope * (middle - x)) / width];
  },
  guess: (x, y) => {
    const { low, high, middle, width, rising } = shapeOf(x, y);
    return { bottom: low, top: high, middle, width: rising ? width : -width };
  },
};

/** Peleg's form of the Fermi function, y = top/(1 + e^((x − middle)/width)): falls from `top` to 0 around `middle`. */
export const fermi: CurveModel<"top" | "middle" | "width"> = {
  name: "Fermi sigmoid",
  equation: "y = top/(1 + e^((x - middle)/width))",
  parameters: { top: {}, middle: {}, width: {} },
  evaluate: (x, { top, middle, width }) => top / (1 + Math.exp((x - middle) / width)),
  gradient: (x, { top, middle, width }) => {
    const share = 1 / (1 + Math.exp((x - middle) / width));
    const slope = (top * share * (1 - share)) / width;
    return [share, slope, (slope * (x - middle)) / width];
  },
  guess: (x, y) => {
    const { high, middle, width, rising } = shapeOf(x, y);
    return { top: high, middle, width: rising ? -width : width };
  },
};

/** Plateaus a little outside the data, then the logit of y against x as a line. */
function shapeOf(
  x: readonly number[],
  y: readonly number[],
): { low: number; high: number; middle: number; width: number; rising: boolean } {
  const least = smallestOf(y);
  const most = largestOf(y);
  const room = 0.05 * (most - least);
  const low = least - room;
  const high = most + room;
  const logits = y.map((value) => Math.log((value - low) / (high - value)));
  const { intercept, slope } = lineThrough(x, logits);
  const range = largestOf(x) - smallestOf(x);
  const usable = Math.abs(slope) > 1e-6 / range ? slope : 4 / range;
  return { low, high, middle: -intercept / usable, width: 1 / Math.abs(usable), rising: usable > 0 };
}
