import { fail } from "../../check/check";
import { choleskyOrNull } from "../../statistics/linear-algebra/cholesky";
import { seededRandom } from "../../statistics/random/seeded-random";
import { type DesignModel, momentsOf, rowsOf } from "./design-model";

/** Runs to part into blocks. */
export interface BlockRunsOptions<Point = readonly number[]> {
  readonly points: readonly Point[];
  /** with its constant, which the blocks then share between them */
  readonly model: DesignModel<Point>;
  /** how many runs each block holds, such as the loads of a morning; they add up to the runs */
  readonly sizes: readonly number[];
  /** how many times the search begins anew; 20 unless given */
  readonly starts?: number;
  /** 1 unless given */
  readonly seed?: number;
}

/** Which run goes into which block. */
export interface BlockedRuns {
  /** block of each run, from 1, in the order of the points: as `runOrder` takes them */
  readonly blocks: readonly number[];
  /** what each coefficient keeps of its certainty on average (%): 100 where blocks touch none of them */
  readonly efficiency: number;
}

const MOST_PASSES = 100;
const GAIN = 1e-9;

/**
 * Parts the runs of a plan into blocks so that the steps between blocks blur its coefficients least: runs of different blocks are
 * swapped while |XᵀX| of the terms with a step a block grows (Cook & Nachtsheim 1989, from memory). The efficiency is
 * 100 (|XᵀX| with blocks / its greatest value with orthogonal ones)^(1/q) over the q terms beside the constant.
 *
 * @throws where the sizes do not add up to the runs, or blocks and terms cannot be told apart
 * @example
 * const factors = ["air", "time"];
 * const model = termsModel({ factors, terms: ["1", "air", "time"] });
 * const points = fullFactorial({ levels: [2, 2] });
 * blockRuns({ points, model, sizes: [2, 2] }).blocks; // → [1, 2, 2, 1]
 */
export function blockRuns<Point>(options: BlockRunsOptions<Point>): BlockedRuns {
  const where = "blockRuns";
  const { points, model, sizes, starts = 20 } = options;
  if (sizes.length < 2 || !sizes.every((size) => Number.isInteger(size) && size >= 1))
    fail(`${where}: sizes`, "must be two whole numbers from 1, or more", sizes);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  if (total !== points.length) fail(`${where}: sizes`, `must add up to the ${points.length} runs`, total);
  const terms = model.terms.length;
  const rows = rowsOf(`${where}: points`, model, points);
  const constant = model.terms.findIndex((_, term) =>
    points.every((_, run) => rows[run * terms + term] === rows[term] && rows[term] !== 0),
  );
  if (constant < 0) fail(`${where}: model`, "must have a constant, which the blocks share", model.terms);
  const random = seededRandom(options.seed ?? 1);
  const first = sizes.flatMap((size, block) => Array.from({ length: size }, () => block));
  let best: { readonly blocks: readonly number[]; readonly value: number } | null = null;
  for (let start = 0; start < starts; start++) {
    const blocks = [...first];
    for (let last = blocks.length - 1; last > 0; last--) {
      const other = random.integer(last + 1);
      [blocks[last], blocks[other]] = [blocks[other], blocks[last]];
    }
    const value = swapped(rows, terms, constant, blocks, sizes);
    if (value > (best?.value ?? Number.NEGATIVE_INFINITY) + GAIN) best = { blocks, value };
  }
  if (best === null)
    fail(
      `${where}: sizes`,
      "must leave the terms to be told beside the blocks: take fewer blocks, more runs or fewer terms",
      sizes,
    );
  const apart = logWithin(rows, terms, constant, new Array<number>(points.length).fill(0), [points.length]);
  return Object.freeze({
    blocks: Object.freeze(numbered(best.blocks)),
    efficiency: 100 * Math.exp((best.value - apart) / Math.max(1, terms - 1)),
  });
}

/** Swaps runs between blocks while the determinant grows; changes `blocks`. */
function swapped(
  rows: Float64Array,
  terms: number,
  constant: number,
  blocks: number[],
  sizes: readonly number[],
): number {
  let value = logWithin(rows, terms, constant, blocks, sizes);
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    let isBetter = false;
    for (let one = 0; one < blocks.length; one++)
      for (let other = one + 1; other < blocks.length; other++) {
        if (blocks[one] === blocks[other]) continue;
        [blocks[one], blocks[other]] = [blocks[other], blocks[one]];
        const found = logWithin(rows, terms, constant, blocks, sizes);
        if (found > value + GAIN || (value === Number.NEGATIVE_INFINITY && found > value)) {
          value = found;
          isBetter = true;
        } else [blocks[one], blocks[other]] = [blocks[other], blocks[one]];
      }
    if (!isBetter) break;
  }
  return value;
}

/** ln |XᵀX| of the terms beside the constant, each about its mean in its block: what is left of them when steps are told too. */
function logWithin(
  rows: Float64Array,
  terms: number,
  constant: number,
  blocks: readonly number[],
  sizes: readonly number[],
): number {
  const size = terms - 1;
  if (size === 0) return 0;
  const own = Array.from({ length: terms }, (_, term) => term).filter((term) => term !== constant);
  const means = new Float64Array(sizes.length * size);
  for (const [run, block] of blocks.entries())
    for (let at = 0; at < size; at++) means[block * size + at] += rows[run * terms + own[at]] / sizes[block];
  const centred = new Float64Array(blocks.length * size);
  for (const [run, block] of blocks.entries())
    for (let at = 0; at < size; at++) centred[run * size + at] = rows[run * terms + own[at]] - means[block * size + at];
  const lower = choleskyOrNull(momentsOf(centred, size), size, 1e-10);
  if (lower === null) return Number.NEGATIVE_INFINITY;
  let log = 0;
  for (let i = 0; i < size; i++) log += 2 * Math.log(lower[i * size + i]);
  return log;
}

/** Blocks from 1, in the order in which they come first. */
function numbered(blocks: readonly number[]): readonly number[] {
  const order = [...new Set(blocks)];
  return blocks.map((block) => order.indexOf(block) + 1);
}
