import { fail, notNegative } from "../../check/check";
import { selectOrder } from "../select-order";
import type { UncertainInput } from "../uncertainty/uncertain-input";
import { type SeededRandom, seededRandom } from "./seeded-random";

/** What `monteCarlo` works from. */
export interface MonteCarloOptions<Name extends string> {
  readonly inputs: { readonly [K in Name]: UncertainInput };
  /** the measured quantity as a function of the inputs' values */
  readonly measure: (values: { readonly [K in Name]: number }) => number;
  /** 10,000 unless given */
  readonly draws?: number;
  /** 1 unless given; the same seed gives the same answer everywhere */
  readonly seed?: number;
  /** share of the results that the interval holds, 0.95 unless given */
  readonly coverage?: number;
}

/** A measured quantity from drawn inputs. */
export interface MonteCarloResult {
  readonly mean: number;
  /** standard deviation of the results: the standard uncertainty */
  readonly standardUncertainty: number;
  /** the middle `coverage` of the results, the same share left out at each end */
  readonly interval: readonly [number, number];
  readonly draws: number;
}

/**
 * Propagation of distributions by Monte Carlo (JCGM 101:2008): draws every input, computes the measure, and reads mean,
 * spread and the probabilistically symmetric interval from the ordered results. Inputs are independent.
 *
 * @param options inputs with their shapes, the measure, draws and seed
 * @returns mean, standard uncertainty, interval
 * @example
 * const before = rectangularInput(25, 0.1);
 * const after = rectangularInput(20, 0.1);
 * const result = monteCarlo({ inputs: { before, after }, measure: (m) => m.after / m.before, draws: 200000 });
 * result.standardUncertainty; // → 0.003
 */
export function monteCarlo<Name extends string>(options: MonteCarloOptions<Name>): MonteCarloResult {
  const draws = options.draws ?? 10_000;
  if (!(Number.isInteger(draws) && draws >= 100)) fail("monteCarlo: draws", "must be a whole number >= 100", draws);
  const coverage = options.coverage ?? 0.95;
  if (!(coverage > 0 && coverage < 1)) fail("monteCarlo: coverage", "must lie between 0 and 1", coverage);
  const names = Object.keys(options.inputs) as Name[];
  for (const name of names) {
    notNegative(options.inputs[name].standardUncertainty, `monteCarlo: standardUncertainty of ${name}`, "");
  }
  const random = seededRandom(options.seed ?? 1);
  const results = new Float64Array(draws);
  const values = {} as Record<Name, number>;
  for (let draw = 0; draw < draws; draw++) {
    for (const name of names) values[name] = drawInput(random, options.inputs[name]);
    results[draw] = options.measure(values);
  }
  return summariseDraws(results, coverage);
}

/** One value of an input, drawn by its shape. */
export function drawInput(random: SeededRandom, input: UncertainInput): number {
  const { value, standardUncertainty: u } = input;
  if (u === 0) return value;
  if (input.shape === "rectangular") return value + u * Math.sqrt(3) * (2 * random.uniform() - 1);
  if (input.shape === "triangular") return value + u * Math.sqrt(6) * (random.uniform() - random.uniform());
  return value + u * random.normal();
}

/** Mean, standard deviation and the middle share of drawn results; reorders the array it is given. */
export function summariseDraws(results: Float64Array, coverage: number): MonteCarloResult {
  const draws = results.length;
  let mean = 0;
  for (let at = 0; at < draws; at++) mean += results[at];
  mean /= draws;
  let squares = 0;
  for (let at = 0; at < draws; at++) squares += (results[at] - mean) ** 2;
  if (!Number.isFinite(squares)) fail("monteCarlo: measure", "must be finite for every draw", mean);
  const outside = Math.round((draws * (1 - coverage)) / 2);
  const low = selectOrder(results, outside);
  const high = selectOrder(results, draws - 1 - outside, outside);
  return Object.freeze({
    mean,
    standardUncertainty: Math.sqrt(squares / (draws - 1)),
    interval: Object.freeze([low, high] as const),
    draws,
  });
}
