import { fail, finite, notNegative } from "../../check/check";
import { studentTQuantile } from "../distributions/student-t-distribution";
import type { UncertainInput } from "./uncertain-input";

/** What `propagateUncertainty` works from. */
export interface PropagateOptions<Name extends string> {
  readonly inputs: { readonly [K in Name]: UncertainInput };
  /** the measured quantity as a function of the inputs' values */
  readonly measure: (values: { readonly [K in Name]: number }) => number;
  /** correlation of pairs of inputs, −1 to 1; pairs left out are independent */
  readonly correlations?: readonly { readonly pair: readonly [Name, Name]; readonly coefficient: number }[];
}

/** A measured quantity with its doubt. */
export interface Propagated<Name extends string = string> {
  readonly value: number;
  readonly standardUncertainty: number;
  /** effective degrees of freedom, Welch–Satterthwaite; Infinity when every input is known without limit or inputs correlate */
  readonly degreesOfFreedom: number;
  /** value ± t·u at 95 % */
  readonly interval95: readonly [number, number];
  /** share of the variance that each input brings, 0 to 1; with correlated inputs only its own part */
  readonly shares: { readonly [K in Name]: number };
}

/**
 * The law of propagation of uncertainty (GUM: JCGM 100:2008, equations 10 and 13), with sensitivities by central
 * differences, and the Welch–Satterthwaite degrees of freedom (its annex G.4).
 *
 * u² = Σ (cᵢuᵢ)² + 2 Σ Σ cᵢcⱼuᵢuⱼrᵢⱼ;  ν = u⁴ / Σ (cᵢuᵢ)⁴/νᵢ
 *
 * First order: good while the measure is nearly straight over ± 2u of every input; `monteCarlo` needs no such promise.
 *
 * @param options inputs, the measure, correlations
 * @returns value, standard uncertainty, degrees of freedom, 95 % interval, share of each input
 * @example
 * const before = rectangularInput(25, 0.1);
 * const after = rectangularInput(20, 0.1);
 * propagateUncertainty({ inputs: { before, after }, measure: (m) => m.after / m.before }).standardUncertainty; // → 0.0029575
 */
export function propagateUncertainty<Name extends string>(options: PropagateOptions<Name>): Propagated<Name> {
  const names = Object.keys(options.inputs) as Name[];
  const values = Object.fromEntries(names.map((name) => [name, options.inputs[name].value])) as Record<Name, number>;
  const value = finite(options.measure(values), "propagateUncertainty: measure", "");
  const part = new Map<Name, number>();
  for (const name of names) {
    const { standardUncertainty } = options.inputs[name];
    const u = notNegative(standardUncertainty, `propagateUncertainty: standardUncertainty of ${name}`, "");
    part.set(name, u === 0 ? 0 : sensitivity(options.measure, values, name, u) * u);
  }
  let variance = 0;
  for (const name of names) variance += part.get(name)! ** 2;
  const ownVariance = variance;
  for (const { pair, coefficient } of options.correlations ?? []) {
    for (const name of pair) if (!part.has(name)) fail("propagateUncertainty: correlations", "must name inputs", name);
    if (!(Math.abs(coefficient) <= 1))
      fail("propagateUncertainty: coefficient", "must be between -1 and 1", coefficient);
    variance += 2 * coefficient * part.get(pair[0])! * part.get(pair[1])!;
  }
  const standardUncertainty = Math.sqrt(Math.max(0, variance));
  const degreesOfFreedom = options.correlations?.length
    ? Number.POSITIVE_INFINITY
    : effective(options.inputs, names, part);
  const half = studentTQuantile(0.975, degreesOfFreedom) * standardUncertainty;
  return Object.freeze({
    value,
    standardUncertainty,
    degreesOfFreedom,
    interval95: Object.freeze([value - half, value + half] as const),
    shares: Object.freeze(
      Object.fromEntries(names.map((name) => [name, ownVariance > 0 ? part.get(name)! ** 2 / ownVariance : 0])),
    ) as { readonly [K in Name]: number },
  });
}

function sensitivity<Name extends string>(
  measure: PropagateOptions<Name>["measure"],
  values: Record<Name, number>,
  name: Name,
  u: number,
): number {
  const step = u * 1e-3;
  const up = measure({ ...values, [name]: values[name] + step });
  const down = measure({ ...values, [name]: values[name] - step });
  return finite((up - down) / (2 * step), `propagateUncertainty: sensitivity to ${name}`, "");
}

function effective<Name extends string>(
  inputs: PropagateOptions<Name>["inputs"],
  names: readonly Name[],
  part: ReadonlyMap<Name, number>,
): number {
  let variance = 0;
  let sum = 0;
  for (const name of names) {
    const size = part.get(name)!;
    variance += size ** 2;
    const degrees = inputs[name].degreesOfFreedom;
    if (degrees !== undefined) sum += size ** 4 / degrees;
  }
  return sum > 0 ? variance ** 2 / sum : Number.POSITIVE_INFINITY;
}
