import { type Kitchen, nextTrial } from "slabwright";
import type { CandidateTrial } from "slabwright/advice";
import type { CrispCalibration } from "slabwright/crisp";
import { optimalDesign, polynomialTerms, termsModel } from "slabwright/plan";
import { type SeededRandom, seededRandom } from "slabwright/statistics";
import type { Product } from "../products";
import type { StoredWorld } from "../stored-world";
import { CRISP_SCORE, limitOf, TOO_BROWN_SCORE } from "../world";
import type { LoggedTrial } from "../world-kitchen";
import { COURSE_RANGE } from "./course";
import { expectedImprovement, type Observed } from "./expected-improvement";
import type { PlanQuestion } from "./plan-ways";
import type { AskedTrial } from "./run-trial";

/** What a policy knows when it is asked for the next trial. */
export interface PolicyState {
  readonly kitchen: Kitchen;
  readonly calibration: CrispCalibration;
  /** settings of the card: load, turn and what is too dry */
  readonly own: { readonly loadFraction: number; readonly turned: boolean; readonly tooDryPercent: number };
  readonly product: Product;
  readonly stored: StoredWorld;
  readonly question: PlanQuestion;
  /** trials so far as they were asked for, and as they came out */
  readonly asked: readonly AskedTrial[];
  readonly logged: readonly LoggedTrial[];
  /** when pieces should be ready, as far as is known before any trial (min) */
  readonly priorMin: (thicknessMm: number, setpointC: number) => number;
  /** of the kitchen */
  readonly seed: number;
}

/** What a policy says: the next trial, and whether it would rather stop (null: it never says). */
export interface PolicyAnswer {
  readonly asked: AskedTrial;
  readonly stop: boolean | null;
}

export type Policy = (state: PolicyState) => PolicyAnswer;

export const POLICIES: Readonly<Record<string, Policy>> = {
  nextTrial: (state) => byNextTrial(state, ([first]) => first),
  mostGain: (state) =>
    byNextTrial(state, (candidates) => candidates.reduce((most, one) => (one.gain > most.gain ? one : most))),
  random: atRandom,
  grid: byGrid,
  dOptimal: byDesign,
  improvement: byImprovement,
};

/** Thicknesses over the product's own, steps of the setpoint (K), times over the expected one: what the fixed plans choose among. */
const THICKER = [0.75, 0.87, 1, 1.15, 4 / 3] as const;
const HOTTER_K = [-10, 0, 10] as const;
const LATER = [0.6, 0.8, 1, 1.2, 1.4] as const;
const LONGEST_RUN = 16;
/** A step of thickness beside the same step of time, as the improvement sees them. */
const THICKNESS_SCALE = 0.5;

/** So little outside its range a surface still holds. */
const OUTSIDE = 0.04;

/**
 * One of the library's candidates that the simulated courses hold: the first, or that of the greatest gain whatever a card still
 * asks for.
 */
function byNextTrial(
  { kitchen, calibration, own, product, question }: PolicyState,
  choose: (candidates: readonly CandidateTrial[]) => CandidateTrial,
): PolicyAnswer {
  const { candidates, stopping } = nextTrial({
    kitchen,
    variantId: product.id,
    calibration,
    ...own,
    question: question === "time" ? { kind: "time" } : { kind: "pan" },
  });
  const [thin, thick] = COURSE_RANGE.thickness;
  const [empty, full] = COURSE_RANGE.load;
  const held = candidates.filter(
    ({ thicknessMm, setpointC, loadFraction }) =>
      thicknessMm >= (1 - OUTSIDE) * thin * product.thicknessMm &&
      thicknessMm <= (1 + OUTSIDE) * thick * product.thicknessMm &&
      Math.abs(setpointC - product.setpointC) <= COURSE_RANGE.setpointK &&
      loadFraction >= empty &&
      loadFraction <= full,
  );
  if (held.length === 0) throw new Error(`nextTrial has no candidate that the courses of ${product.id} hold`);
  const { thicknessMm, setpointC, loadFraction, timeMin, looksMin, probe } = choose(held);
  return { asked: { thicknessMm, setpointC, loadFraction, timeMin, looksMin, probe }, stop: stopping.stop };
}

/** Any of the choices, each as likely. */
function atRandom(state: PolicyState): PolicyAnswer {
  const random = seededRandom(31 * state.seed + state.logged.length);
  return planned(state, pick(random, THICKER), pick(random, HOTTER_K), 0.6 + 0.8 * random.uniform());
}

/** Three thicknesses by four times at the product's own setting, in an order drawn for the kitchen. */
function byGrid(state: PolicyState): PolicyAnswer {
  const points = [THICKER[0], 1, THICKER[4]].flatMap((thicker) =>
    [0.7, 0.9, 1.1, 1.35].map((later) => [thicker, later]),
  );
  const order = shuffled(points, seededRandom(37 * state.seed));
  const [thicker, later] = order[state.logged.length % order.length];
  return planned(state, thicker, 0, later);
}

/** The best sixteen runs for a full quadratic in thickness, setpoint and time (D), in an order drawn for the kitchen. */
function byDesign(state: PolicyState): PolicyAnswer {
  const [thicker, hotter, later] = shuffled(designPoints(), seededRandom(41 * state.seed))[
    state.logged.length % LONGEST_RUN
  ];
  return planned(state, THICKER[2 + 2 * thicker], 10 * hotter, LATER[2 + 2 * later]);
}

let design: readonly (readonly number[])[] | null = null;

function designPoints(): readonly (readonly number[])[] {
  if (design !== null) return design;
  const factors = ["thickness", "setpoint", "time"];
  const steps = [-1, -0.5, 0, 0.5, 1];
  const candidates = steps.flatMap((one) => [-1, 0, 1].flatMap((two) => steps.map((three) => [one, two, three])));
  const model = termsModel({ factors, terms: polynomialTerms(factors) });
  design = optimalDesign({ candidates, model, runs: LONGEST_RUN }).points;
  return design;
}

/** Noisy expected improvement of the share of good pieces, over the time and, where that is asked, the thickness. */
function byImprovement(state: PolicyState): PolicyAnswer {
  const { product, logged, asked, priorMin, stored, question } = state;
  const seen: readonly Observed[] = logged.map((trial, at) => ({
    at: [
      Math.log(asked[at].timeMin / priorMin(asked[at].thicknessMm, product.setpointC)),
      THICKNESS_SCALE * Math.log(asked[at].thicknessMm / product.thicknessMm),
    ],
    value: seenSuccess(trial, product, stored.tooDryPercent),
  }));
  const thicknesses = question === "time" ? [1] : THICKER;
  const places = thicknesses.flatMap((thicker) =>
    Array.from({ length: question === "time" ? 33 : 17 }, (_, at) => [
      Math.log(0.5) + (at / (question === "time" ? 32 : 16)) * Math.log(1.8 / 0.5),
      THICKNESS_SCALE * Math.log(thicker),
    ]),
  );
  const [later, thicker] = expectedImprovement({ seen, places, random: seededRandom(43 * state.seed + logged.length) });
  return planned(state, Math.exp(thicker / THICKNESS_SCALE), 0, Math.exp(later));
}

/** Share of the panel to which the pieces were crisp and not too brown; none where they were cold or too dry. */
export function seenSuccess(trial: LoggedTrial, product: Product, tooDryPercent: number): number {
  const { crispScores, brownScores, beforeG, afterG, restedCoreC } = trial;
  if ((restedCoreC ?? 0) < limitOf(product).limitC || 100 * (1 - afterG / beforeG) > tooDryPercent) return 0;
  const good = crispScores.filter((score, at) => score >= CRISP_SCORE && brownScores[at] < TOO_BROWN_SCORE);
  return crispScores.length === 0 ? 0 : good.length / crispScores.length;
}

function planned(
  { product, own, priorMin }: PolicyState,
  thicker: number,
  hotterK: number,
  later: number,
): PolicyAnswer {
  const [thicknessMm, setpointC] = [thicker * product.thicknessMm, product.setpointC + hotterK];
  const timeMin = Math.max(2, Math.round(2 * later * priorMin(thicknessMm, setpointC)) / 2);
  return {
    asked: {
      thicknessMm,
      setpointC,
      timeMin,
      loadFraction: own.loadFraction,
      looksMin: looksBefore(timeMin),
      probe: true,
    },
    stop: null,
  };
}

/** Two looks before a time, a tenth of it apart. */
function looksBefore(timeMin: number): readonly number[] {
  const step = Math.max(1, Math.round(0.1 * timeMin));
  return [timeMin - 2 * step, timeMin - step].filter((look) => look >= 1);
}

function pick<T>(random: SeededRandom, of: readonly T[]): T {
  return of[random.integer(of.length)];
}

function shuffled<T>(of: readonly T[], random: SeededRandom): readonly T[] {
  const list = [...of];
  for (let at = list.length - 1; at > 0; at--) {
    const other = random.integer(at + 1);
    [list[at], list[other]] = [list[other], list[at]];
  }
  return list;
}
