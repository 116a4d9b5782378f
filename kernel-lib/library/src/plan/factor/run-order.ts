import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { seededRandom } from "../../statistics/random/seeded-random";
import type { CodedPoint } from "./factor";

/** How the runs of a plan are to be ordered. */
export interface RunOrderOptions {
  readonly points: readonly CodedPoint[];
  /** block of each point, such as a morning or a cook, counted from 1; all one block unless given */
  readonly blocks?: readonly number[];
  /** how often each point is run; 1 unless given */
  readonly replicates?: number;
  /** each replicate has blocks of its own; false unless given */
  readonly blockPerReplicate?: boolean;
  /** centre points (all codes 0) added to every block; 0 unless given */
  readonly centres?: number;
  /** 1 unless given; the same seed gives the same order everywhere */
  readonly seed?: number;
}

/** One run in its turn. */
export interface PlannedRun {
  /** when it is run, from 1 */
  readonly run: number;
  readonly block: number;
  readonly point: CodedPoint;
  /** place of the point in the plan's list, from 1; null for an added centre point */
  readonly listed: number | null;
  readonly replicate: number;
}

/**
 * The runs of a plan in a random order, block after block (R. A. Fisher 1935: what drifts over a morning then falls on no
 * factor on purpose). Shuffled within each block after R. Durstenfeld (1964).
 *
 * @returns runs in the order in which to make them
 * @example
 * const runs = runOrder({ points: fullFactorial({ levels: [2, 2] }), centres: 1, seed: 7 });
 * runs.map(({ listed }) => listed); // → [4, 1, null, 2, 3]
 */
export function runOrder(options: RunOrderOptions): readonly PlannedRun[] {
  const where = "runOrder";
  const { points, replicates = 1, centres = 0, blockPerReplicate = false } = options;
  if (points.length === 0) fail(`${where}: points`, "must hold at least one point", points);
  const factors = points[0].length;
  const uneven = points.find((point) => point.length !== factors);
  if (uneven !== undefined) fail(`${where}: points`, `must all have ${factors} numbers, as the first has`, uneven);
  const blocks = options.blocks ?? points.map(() => 1);
  if (blocks.length !== points.length)
    fail(`${where}: blocks`, `must hold one number for each of the ${points.length} points`, blocks.length);
  const strange = blocks.find((block) => !(Number.isInteger(block) && block >= 1));
  if (strange !== undefined) fail(`${where}: blocks`, "must be whole numbers from 1", strange);
  if (!(Number.isInteger(replicates) && replicates >= 1 && replicates <= 1000))
    fail(`${where}: replicates`, "must be a whole number from 1 to 1000", replicates);
  if (!(Number.isInteger(centres) && centres >= 0 && centres <= 1000))
    fail(`${where}: centres`, "must be a whole number from 0 to 1000", centres);

  const names = [...new Set(blocks)].sort((a, b) => a - b);
  const highest = names[names.length - 1];
  const runsOf = new Map<number, Omit<PlannedRun, "run">[]>();
  for (let replicate = 1; replicate <= replicates; replicate++) {
    for (const [at, point] of points.entries()) {
      const block = blocks[at] + (blockPerReplicate ? (replicate - 1) * highest : 0);
      const run = { block, point: [...point], listed: at + 1, replicate };
      const others = runsOf.get(block);
      if (others === undefined) runsOf.set(block, [run]);
      else others.push(run);
    }
  }
  const random = seededRandom(options.seed ?? 1);
  const ordered: PlannedRun[] = [];
  for (const [block, listedRuns] of [...runsOf].sort(([a], [b]) => a - b)) {
    const added = Array.from({ length: centres }, (_, at) => ({
      block,
      point: Array.from({ length: factors }, () => 0),
      listed: null,
      replicate: at + 1,
    }));
    const runs = [...listedRuns, ...added];
    for (let last = runs.length - 1; last > 0; last--) {
      const other = random.integer(last + 1);
      [runs[last], runs[other]] = [runs[other], runs[last]];
    }
    for (const run of runs) {
      const turn = { run: ordered.length + 1, ...run };
      ordered.push(turn);
    }
  }
  return freezeDeep(ordered);
}
