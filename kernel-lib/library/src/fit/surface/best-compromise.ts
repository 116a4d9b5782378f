import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import { seededRandom } from "../../statistics/random/seeded-random";
import { checkGoal, desirability, type Goal, overallDesirability } from "./desirability";
import type { SurfaceFit } from "./fit-surface";
import { rowAt, surfaceAt } from "./surface-at";

/** A surface, and what is wanted of what it tells. */
export interface WantedSurface {
  /** as a person says it: `"crispness"` */
  readonly name: string;
  readonly fit: SurfaceFit;
  readonly goal: Goal;
}

/** What `bestCompromise` works from. */
export interface BestCompromiseOptions {
  /** surfaces over the same factors */
  readonly wanted: readonly WantedSurface[];
  /** low and high of each factor, coded units; the range that all fits share unless given */
  readonly region?: readonly (readonly [number, number])[];
  /** what may be set at all, such as points whose core is safe; all of the region unless given */
  readonly allowed?: (point: readonly number[]) => boolean;
  /** levels searched along each factor before the best is refined; 21 for two factors, 9 for more unless given */
  readonly levels?: number;
  /** draws of the coefficients for the chances; 500 unless given */
  readonly draws?: number;
  /** 1 unless given */
  readonly seed?: number;
}

/** What comes of one goal at the compromise. */
export interface MetGoal {
  readonly name: string;
  readonly value: number;
  /** for the surface: where the mean of many trials would lie */
  readonly confidence95: readonly [number, number];
  /** how well the goal is met, 0 to 1 */
  readonly met: number;
}

/** The point that meets several goals best. */
export interface BestCompromise {
  /** coded units */
  readonly point: readonly number[];
  /** geometric mean over the goals, 0 to 1 */
  readonly overall: number;
  /** the middle 95 % of it over draws of the coefficients */
  readonly overall95: readonly [number, number];
  /** chance that every goal is met at least in part there [-] */
  readonly chanceAllMet: number;
  readonly goals: readonly MetGoal[];
  /** some factor rests at the edge of the region: better may lie beyond */
  readonly atEdge: boolean;
  readonly reading: string;
}

const MOST_SEARCHED = 100_000;

/**
 * The point at which several surfaces meet their goals best together (Derringer & Suich 1980): the greatest overall desirability over a
 * grid, refined by ever shorter steps along each factor. The surfaces are estimates, and desirability hides their doubt: hence the
 * chances, over draws of each surface's coefficients (Student's t with its degrees of freedom; surfaces drawn independently).
 *
 * @throws where no allowed point meets all goals, naming the goal that is met nowhere
 * @example
 * const points = [[-1], [-0.5], [0], [0.5], [1], [1]];
 * const crisp = fitSurface({ factors: ["time"], points, y: [3, 5.1, 6.9, 8, 8.6, 8.4] });
 * const loss = fitSurface({ factors: ["time"], points, y: [5, 6.4, 8.1, 10.3, 12.8, 13] });
 * const best = bestCompromise({
 *   wanted: [
 *     { name: "crispness", fit: crisp, goal: { wanted: "more", low: 5, target: 8.5 } },
 *     { name: "loss", fit: loss, goal: { wanted: "less", target: 6, high: 13 } },
 *   ],
 * });
 * best.point; // → [0.179]
 */
export function bestCompromise(options: BestCompromiseOptions): BestCompromise {
  const where = "bestCompromise";
  const { wanted, allowed = () => true, draws = 500 } = options;
  if (wanted.length === 0) fail(`${where}: wanted`, "must hold at least one surface with its goal", "none");
  const { factors } = wanted[0].fit;
  for (const { name, fit, goal } of wanted) {
    checkGoal(`${where}: ${name}`, goal);
    if (fit.factors.join() !== factors.join())
      fail(`${where}: ${name}`, `must be a surface over ${factors.join(", ")}, as the first is`, fit.factors);
  }
  if (!(Number.isInteger(draws) && draws >= 20)) fail(`${where}: draws`, "must be a whole number >= 20", draws);
  const region = options.region ?? sharedRegion(where, wanted);
  if (region.length !== factors.length || region.some(([low, high]) => !(low < high)))
    fail(`${where}: region`, `must hold a low and a higher number for each of ${factors.join(", ")}`, region);
  const levels = options.levels ?? (factors.length <= 2 ? 21 : 9);
  if (!(Number.isInteger(levels) && levels >= 2 && levels ** factors.length <= MOST_SEARCHED))
    fail(`${where}: levels`, `must be a whole number >= 2 that makes at most ${MOST_SEARCHED} points`, levels);
  const goals = wanted.map(({ goal }) => goal);
  const heights = (point: readonly number[]): number[] =>
    wanted.map(({ fit }) => heightOf(fit, rowAt(fit, point), coefficientsOf(fit)));
  const overall = (values: readonly number[]): number =>
    overallDesirability(
      values.map((value, at) => desirability(value, goals[at])),
      goals,
    );
  const start = bestOfGrid({ where, wanted, region, levels, allowed, heights, overall });
  const point = refined(start, { region, levels, allowed, valueAt: (at) => overall(heights(at)) });
  const drawn = drawnOverall({ wanted, point, overall, draws, seed: options.seed ?? 1 });
  const met = wanted.map(({ name, fit, goal }) => {
    const { value, confidence95 } = surfaceAt(fit, point);
    return { name, value, confidence95, met: desirability(value, goal) };
  });
  const atEdge = point.some((value, at) => {
    const [low, high] = region[at];
    return Math.min(value - low, high - value) < 1e-6 * (high - low);
  });
  const found = overall(met.map(({ value }) => value));
  const least = met.reduce((worst, one) => (one.met < worst.met ? one : worst));
  return freezeDeep({
    point,
    overall: found,
    overall95: [drawn[Math.floor(0.025 * (draws - 1))], drawn[Math.ceil(0.975 * (draws - 1))]],
    chanceAllMet: drawn.filter((one) => one > 0).length / draws,
    goals: met,
    atEdge,
    reading: `Together the goals are met to ${Math.round(100 * found)} %; ${wanted.length > 1 ? `${least.name} gives most way, met to ${Math.round(100 * least.met)} %` : "there is one alone"}.${atEdge ? " It rests at the edge of what was tried: better may lie beyond." : ""}`,
  });
}

function sharedRegion(where: string, wanted: readonly WantedSurface[]): readonly (readonly [number, number])[] {
  return wanted[0].fit.factors.map((name) => {
    const low = wanted.reduce((most, { fit }) => Math.max(most, fit.ranges[name][0]), Number.NEGATIVE_INFINITY);
    const high = wanted.reduce((least, { fit }) => Math.min(least, fit.ranges[name][1]), Number.POSITIVE_INFINITY);
    if (!(low < high)) fail(`${where}: ${name}`, "must have a range that all surfaces share", [low, high]);
    return [low, high] as const;
  });
}

interface BestOfGridOptions {
  readonly where: string;
  readonly wanted: readonly WantedSurface[];
  readonly region: readonly (readonly [number, number])[];
  readonly levels: number;
  readonly allowed: (point: readonly number[]) => boolean;
  readonly heights: (point: readonly number[]) => readonly number[];
  readonly overall: (values: readonly number[]) => number;
}

function bestOfGrid(options: BestOfGridOptions): readonly number[] {
  const { where, wanted, region, levels, allowed, heights, overall } = options;
  const everMet = wanted.map(() => false);
  let best: readonly number[] | null = null;
  let most = 0;
  let isAnyAllowed = false;
  for (let cell = 0; cell < levels ** region.length; cell++) {
    const point = region.map(([low, high], at) => {
      const place = Math.floor(cell / levels ** at) % levels;
      return low + ((high - low) * place) / (levels - 1);
    });
    if (!allowed(point)) continue;
    isAnyAllowed = true;
    const values = heights(point);
    values.forEach((value, at) => {
      everMet[at] ||= desirability(value, wanted[at].goal) > 0;
    });
    const found = overall(values);
    if (found > most) {
      most = found;
      best = point;
    }
  }
  if (!isAnyAllowed)
    fail(
      `${where}: allowed`,
      "must leave some point of the region: widen the region, or loosen what is allowed",
      "none",
    );
  const never = wanted.find((_, at) => !everMet[at]);
  if (best === null)
    fail(
      `${where}: wanted`,
      never === undefined
        ? "must have goals that some point meets together: widen them, or the region"
        : `must have a goal for ${never.name} that some point meets: move its low, target or high`,
      wanted.map(({ goal }) => goal),
    );
  return best;
}

interface RefinedOptions {
  readonly region: readonly (readonly [number, number])[];
  readonly levels: number;
  readonly allowed: (point: readonly number[]) => boolean;
  readonly valueAt: (point: readonly number[]) => number;
}

/** Steps along each factor, and along all diagonals of two, halved until they are a millionth of the region. */
function refined(start: readonly number[], { region, levels, allowed, valueAt }: RefinedOptions): readonly number[] {
  let best = [...start];
  let most = valueAt(best);
  for (let share = 1 / (levels - 1); share > 1e-6; ) {
    let isBetter = false;
    for (const step of stepsOf(region.length)) {
      const point = best.map((value, at) => {
        const [low, high] = region[at];
        return Math.min(high, Math.max(low, value + step[at] * share * (high - low)));
      });
      if (!allowed(point)) continue;
      const value = valueAt(point);
      if (value <= most) continue;
      most = value;
      best = point;
      isBetter = true;
    }
    if (!isBetter) share /= 2;
  }
  return best;
}

function stepsOf(size: number): readonly (readonly number[])[] {
  const steps: number[][] = [];
  for (let one = 0; one < size; one++)
    for (const sign of [1, -1]) {
      const step = new Array<number>(size).fill(0);
      step[one] = sign;
      steps.push(step);
      for (let other = one + 1; other < size; other++)
        for (const across of [1, -1]) {
          const both = [...step];
          both[other] = across;
          steps.push(both);
        }
    }
  return steps;
}

interface DrawnOverallOptions {
  readonly wanted: readonly WantedSurface[];
  readonly point: readonly number[];
  readonly overall: (values: readonly number[]) => number;
  readonly draws: number;
  readonly seed: number;
}

/** Overall desirability at a point over draws of each surface's coefficients, in rising order. */
function drawnOverall({ wanted, point, overall, draws, seed }: DrawnOverallOptions): readonly number[] {
  const random = seededRandom(seed);
  const heights = wanted.map(({ fit }) => surfaceAt(fit, point));
  const found = Array.from({ length: draws }, () =>
    overall(
      wanted.map(({ fit }, at) => {
        const probability = Math.min(1 - 1e-12, Math.max(1e-12, random.uniform()));
        return heights[at].value + heights[at].standardError * studentTQuantile(probability, fit.degreesOfFreedom);
      }),
    ),
  );
  return found.sort((a, b) => a - b);
}

function coefficientsOf(fit: SurfaceFit): readonly number[] {
  return fit.names.map((name) => fit.parameters[name].estimate);
}

function heightOf(fit: SurfaceFit, row: readonly number[], coefficients: readonly number[]): number {
  return fit.names.reduce((sum, _, at) => sum + row[at] * coefficients[at], 0);
}
