import { fail } from "../../check/check";
import type { Values } from "../fit";

/** How far a model's parameter may go, and on which scale it is searched. */
export interface ParameterRange {
  /** −Infinity unless given */
  readonly lower?: number;
  /** Infinity unless given */
  readonly upper?: number;
  /** "log" searches on the logarithm, for a parameter that must stay above zero; "plain" unless given */
  readonly scale?: "plain" | "log";
}

/** A curve with named parameters: three pure functions. `X` is a number, or a record of covariates. */
export interface CurveModel<Name extends string = string, X = number> {
  readonly name: string;
  /** as people write it: `"y = a + b x"` */
  readonly equation: string;
  readonly parameters: { readonly [K in Name]: ParameterRange };
  /** the curve at x */
  readonly evaluate: (x: X, parameters: Values<Name>) => number;
  /** starting values read off the data; several where one is not trustworthy, and each is then tried */
  readonly guess: (x: readonly X[], y: readonly number[]) => Values<Name> | readonly Values<Name>[];
  /** derivative by each parameter, in the order of `parameters`; central differences where left out */
  readonly gradient?: (x: X, parameters: Values<Name>) => readonly number[];
  /** x is a record of covariates, not a number; false unless given */
  readonly readsRecords?: boolean;
}

/** A curve of one's own. */
export interface CurveModelOptions<Name extends string, X = number> {
  readonly name: string;
  /** the curve at x */
  readonly evaluate: (x: X, parameters: Values<Name>) => number;
  /** starting values: one set, or several that are each tried */
  readonly start: Values<Name> | readonly Values<Name>[];
  /** as people write it; the name unless given */
  readonly equation?: string;
  /** least values; −Infinity unless given */
  readonly lower?: { readonly [K in Name]?: number };
  /** greatest values; Infinity unless given */
  readonly upper?: { readonly [K in Name]?: number };
}

/**
 * A model of one's own for `fitCurve`: a function of x and named parameters, and where to start.
 *
 * @example
 * const dip = curveModel({ name: "dip", evaluate: (x, { a, b }) => a * Math.exp(-b * x), start: { a: 1, b: 0.1 } });
 * dip.evaluate(0, { a: 3, b: 1 }); // → 3
 */
export function curveModel<Name extends string, X = number>(options: CurveModelOptions<Name, X>): CurveModel<Name, X> {
  const starts: readonly Values<Name>[] = Array.isArray(options.start)
    ? options.start
    : [options.start as Values<Name>];
  const names = Object.keys(starts[0] ?? {}) as Name[];
  if (names.length === 0) fail("curveModel: start", "must name at least one parameter", options.start);
  const parameters = {} as Record<Name, ParameterRange>;
  for (const name of names) {
    const lower: number | undefined = options.lower?.[name];
    const upper: number | undefined = options.upper?.[name];
    parameters[name] = { lower, upper };
  }
  return Object.freeze({
    name: options.name,
    equation: options.equation ?? options.name,
    parameters,
    evaluate: options.evaluate,
    guess: () => starts,
  });
}
