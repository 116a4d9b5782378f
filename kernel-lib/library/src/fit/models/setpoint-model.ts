import { finite } from "../../check/check";
import { smallestOf } from "../../statistics/extremes";
import type { Values } from "../fit";
import type { CurveModel } from "./curve-model";

/** A point of a curve with a setpoint. */
export interface SetpointPoint {
  readonly x: number;
  /** air temperature, °C */
  readonly setpointC: number;
  readonly [covariate: string]: number | string | undefined;
}

/** How time follows the setpoint. */
export interface SetpointModelOptions {
  /** setpoint at which the curve holds unscaled, °C; best in the middle of the trials' */
  readonly referenceC: number;
}

/**
 * A curve of time whose height follows the setpoint through the driving difference of temperature:
 * t = f(x) (T_ref − T_m)/(T_air − T_m), with `middleC` = T_m (°C), the temperature that the air works against. Trials at
 * one setpoint leave T_m undetermined: then hold it with `fixed: { middleC: 15 }`. Fit with `fitCurve`, giving points
 * `{ x, setpointC }`.
 *
 * @example
 * const model = setpointModel(curves.line, { referenceC: 190 });
 * model.evaluate({ x: 10, setpointC: 200 }, { a: 2, b: 1, middleC: 30 }); // → 11.2941
 */
export function setpointModel<Name extends string>(
  model: CurveModel<Name>,
  options: SetpointModelOptions,
): CurveModel<Name | "middleC", SetpointPoint> {
  const { referenceC } = options;
  finite(referenceC, "setpointModel: referenceC", "°C");
  const ratio = (setpointC: number, middleC: number): number =>
    setpointC > middleC && referenceC > middleC ? (referenceC - middleC) / (setpointC - middleC) : Number.NaN;
  return {
    name: `${model.name} with setpoint`,
    equation: `(${model.equation.replace(/^\w+ = /, "")}) (${referenceC} - middleC)/(setpointC - middleC)`,
    readsRecords: true,
    parameters: { ...model.parameters, middleC: { upper: referenceC - 1 } } as CurveModel<
      Name | "middleC",
      SetpointPoint
    >["parameters"],
    evaluate: (point, values) => model.evaluate(point.x, values) * ratio(point.setpointC, values.middleC),
    guess: (points, y) => {
      const middleC = Math.min(30, Math.min(referenceC, smallestOf(points.map((point) => point.setpointC))) - 20);
      const guess = model.guess(
        points.map((point) => point.x),
        y.map((value, i) => value / ratio(points[i].setpointC, middleC)),
      );
      const starts: readonly Values<Name>[] = Array.isArray(guess) ? guess : [guess as Values<Name>];
      return starts.map((start) => ({ ...start, middleC }) as Values<Name | "middleC">);
    },
  };
}
