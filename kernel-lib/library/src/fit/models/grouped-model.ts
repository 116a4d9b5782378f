import { fail } from "../../check/check";
import type { Values } from "../fit";
import type { CurveModel, ParameterRange } from "./curve-model";

/** A point of a grouped curve: its x and the group it belongs to, beside whatever the inner model reads. */
export interface GroupedPoint {
  /** left out where the inner model reads other fields */
  readonly x?: number;
  /** the appliance, kitchen or batch */
  readonly group: string;
  readonly [covariate: string]: number | string | undefined;
}

/** How groups differ. */
export interface GroupedModelOptions<Name extends string> {
  /** the groups; the first is the one that others are compared with */
  readonly groups: readonly string[];
  /** multiply the curve by a factor of each group but the first, named `factor[GROUP]`; true unless given */
  readonly factor?: boolean;
  /** parameters that every group has to itself, then named `PARAMETER[GROUP]`; none unless given */
  readonly separate?: readonly Name[];
}

/**
 * A curve over several groups (appliances, kitchens): one shape, times a factor of each group, with parameters shared
 * unless named in `separate`. Fit it with `fitCurve`, giving points `{ x, group }`.
 *
 * @example
 * const both = groupedModel(curves.line, { groups: ["small", "large"] });
 * const x = [6, 9, 12, 6, 9, 12].map((thickness, i) => ({ x: thickness, group: i < 3 ? "small" : "large" }));
 * const fit = fitCurve(both, { x, y: [8, 11.1, 13.9, 9.7, 13.1, 16.9] });
 * fit.parameters["factor[large]"].estimate; // → 1.20383
 */
export function groupedModel<Name extends string, X>(
  model: CurveModel<Name, X>,
  options: GroupedModelOptions<Name>,
): CurveModel<string, GroupedPoint> {
  const where = "groupedModel";
  const { groups, separate = [] } = options;
  const factor = options.factor ?? true;
  if (groups.length < 2) fail(`${where}: groups`, "must name at least two groups", groups);
  if (new Set(groups).size !== groups.length) fail(`${where}: groups`, "must differ from each other", groups);
  const names = Object.keys(model.parameters) as Name[];
  for (const name of separate)
    if (!names.includes(name)) fail(`${where}: separate`, `must be among ${names.join(", ")}`, name);
  if (!factor && separate.length === 0)
    fail(`${where}: separate`, "must name a parameter when there is no factor", separate);
  const ownName = (name: Name, group: string): string => (separate.includes(name) ? `${name}[${group}]` : name);
  const parameters: Record<string, ParameterRange> = {};
  for (const name of names) for (const group of groups) parameters[ownName(name, group)] = model.parameters[name];
  if (factor) for (const group of groups.slice(1)) parameters[`factor[${group}]`] = { lower: 0, scale: "log" };

  const innerPoint = (point: GroupedPoint): X => (model.readsRecords ? point : point.x) as X;
  const innerValues = (point: GroupedPoint, values: Values): Values<Name> => {
    const inner = {} as Record<Name, number>;
    for (const name of names) inner[name] = values[ownName(name, point.group)];
    return inner;
  };
  const factorOf = (point: GroupedPoint, values: Values): number =>
    factor && point.group !== groups[0] ? values[`factor[${point.group}]`] : 1;
  return {
    name: `${model.name} by group`,
    equation: factor ? `factor[group] * (${model.equation.replace(/^\w+ = /, "")})` : `${model.equation}, by group`,
    readsRecords: true,
    parameters,
    evaluate: (point, values) => {
      if (!groups.includes(point.group)) fail(`${where}: group`, `must be one of ${groups.join(", ")}`, point.group);
      return factorOf(point, values) * model.evaluate(innerPoint(point), innerValues(point, values));
    },
    guess: (points, y) => {
      const members = (group: string): number[] => points.map((_, i) => i).filter((i) => points[i].group === group);
      for (const group of groups) {
        if (members(group).length === 0)
          fail(`${where}: group`, "must have trials of every group: log some or leave it out", group);
      }
      const base = guessOf(
        model,
        members(groups[0]).map((i) => innerPoint(points[i])),
        members(groups[0]).map((i) => y[i]),
      );
      const start: Record<string, number> = {};
      for (const group of groups) {
        const own = members(group);
        const guess =
          separate.length > 0
            ? guessOf(
                model,
                own.map((i) => innerPoint(points[i])),
                own.map((i) => y[i]),
              )
            : base;
        for (const name of names) start[ownName(name, group)] = (separate.includes(name) ? guess : base)[name];
      }
      if (factor) {
        for (const group of groups.slice(1)) {
          const own = members(group);
          const top = own.reduce((sum, i) => sum + y[i], 0);
          const bottom = own.reduce(
            (sum, i) => sum + model.evaluate(innerPoint(points[i]), innerValues(points[i], start)),
            0,
          );
          start[`factor[${group}]`] = top / bottom > 0 ? top / bottom : 1;
        }
      }
      return start;
    },
  };
}

function guessOf<Name extends string, X>(
  model: CurveModel<Name, X>,
  x: readonly X[],
  y: readonly number[],
): Values<Name> {
  const guess = model.guess(x, y);
  return Array.isArray(guess) ? guess[0] : (guess as Values<Name>);
}
