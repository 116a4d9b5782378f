import { crispWindow } from "slabwright";
import { windowCalibration } from "slabwright/advice";
import { seedOf } from "../make-worlds";
import { PRODUCTS, type Product } from "../products";
import { bestSafe } from "../score";
import { storedWorlds } from "../stored-world";
import { drawWorld } from "../world";
import { type LoggedTrial, worldKitchen } from "../world-kitchen";
import { courseEmulator, storedCourses } from "./course-emulator";
import { type EmulatedTruth, emulatedTruth } from "./emulated-truth";
import { POLICIES, type PolicyState } from "./policies";
import { type AskedTrial, type PlanKitchen, runTrial } from "./run-trial";
import { type PrintedScore, scorePrinted } from "./score-printed";

/** Which time to print at the product's own thickness, or which of three thicknesses and which time. */
export type PlanQuestion = "time" | "thickness";

/** Thicknesses between which the second question decides, over the product's own. */
const THICKER = [0.75, 1, 4 / 3] as const;

/** What would be printed, what is claimed of it, and whether the plan would stop there (null: it never says). */
export interface Printed extends PrintedScore {
  readonly thicknessMm: number;
  readonly claimed: number;
  readonly stop: boolean | null;
}

/** One kitchen's way under one policy: what it would print after each trial. */
export interface PlanWay {
  readonly policy: string;
  readonly product: string;
  readonly world: number;
  readonly seed: number;
  readonly question: PlanQuestion;
  readonly asked: readonly AskedTrial[];
  /** before any trial, after one, after two, and so on */
  readonly printed: readonly Printed[];
}

export interface PlanWaysOptions {
  readonly policies?: readonly string[];
  /** "time" unless given */
  readonly question?: PlanQuestion;
  /** kitchens: the stored worlds one after the other, then again with another scatter */
  readonly kitchens: number;
  /** the first of them; 0 unless given */
  readonly from?: number;
  /** trials of each */
  readonly trials: number;
  readonly tell?: (line: string, way: PlanWay) => void;
}

/** A kitchen of a stored world that runs what it is asked for. */
export function planKitchen(at: number): PlanKitchen {
  const worlds = storedWorlds();
  // so that few kitchens are already of many products
  const stored = worlds[(2 * at + (Math.floor((2 * at) / worlds.length) % 2)) % worlds.length];
  const product = PRODUCTS.find(({ id }) => id === stored.product) as Product;
  return {
    stored: { ...stored, pans: [] },
    world: drawWorld(product, seedOf(product, stored.seed)),
    emulator: courseEmulator(storedCourses(stored.product, stored.seed), product),
    seed: 100 + at,
  };
}

/** Runs policies in kitchens. */
export function planWays(options: PlanWaysOptions): readonly PlanWay[] {
  const { policies = Object.keys(POLICIES), question = "time", kitchens, from = 0, trials, tell = () => {} } = options;
  const ways: PlanWay[] = [];
  for (let at = from; at < from + kitchens; at++) {
    const kitchen = planKitchen(at);
    for (const policy of policies) {
      const way = wayOf(kitchen, policy, question, trials);
      ways.push(way);
      tell(
        `${at} ${way.product} ${way.world} ${policy}: ${way.printed.map(({ settled }) => (settled ? "+" : "·")).join("")}`,
        way,
      );
    }
  }
  return ways;
}

function wayOf(plan: PlanKitchen, policy: string, question: PlanQuestion, trials: number): PlanWay {
  const { stored, world } = plan;
  const { product } = world;
  const own = {
    loadFraction: product.loadFraction,
    turned: product.turned,
    tooDryPercent: stored.tooDryPercent,
  };
  const places = placesOf(plan, question);
  const best = places.reduce((most, { truth }) => Math.max(most, bestSafe(truth)), 0);
  const logged: LoggedTrial[] = [];
  const asked: AskedTrial[] = [];
  const printed: Printed[] = [];
  let priorMin: PolicyState["priorMin"] | null = null;
  for (let trial = 0; trial <= trials; trial++) {
    const kitchen = worldKitchen({ ...stored, trials: logged }, logged.length);
    const calibration = windowCalibration({ kitchen, variantId: product.id });
    priorMin ??= (thicknessMm, setpointC) => {
      const window = crispWindow({
        kitchen,
        calibration,
        variantId: product.id,
        thicknessMm,
        setpointC,
        ...own,
        draws: 300,
      });
      return Math.min(window.opens.min, 1.5 * window.core.min);
    };
    const offered = places.map(({ thicknessMm, truth }) => {
      const window = crispWindow({ kitchen, calibration, variantId: product.id, thicknessMm, ...own, draws: 1000 });
      return { thicknessMm, truth, recommended: window.recommended };
    });
    const chosen = offered.reduce((one, other) => (other.recommended.success > one.recommended.success ? other : one));
    const state: PolicyState = {
      kitchen,
      calibration,
      own,
      product,
      stored,
      question,
      asked,
      logged,
      priorMin,
      seed: plan.seed,
    };
    const answer = trial === trials && policy !== "nextTrial" ? null : POLICIES[policy](state);
    printed.push({
      ...scorePrinted(chosen.truth, chosen.recommended.cardMin, best),
      thicknessMm: chosen.thicknessMm,
      claimed: chosen.recommended.success,
      stop: answer?.stop ?? null,
    });
    if (answer === null || trial === trials) break;
    logged.push(runTrial(plan, logged, answer.asked));
    asked.push(answer.asked);
  }
  return { policy, product: product.id, world: stored.seed, seed: plan.seed, question, asked, printed };
}

/** The thicknesses that a question decides between, the own one first, with what is true of them. */
function placesOf(
  { world, stored, emulator }: PlanKitchen,
  question: PlanQuestion,
): readonly { readonly thicknessMm: number; readonly truth: EmulatedTruth }[] {
  const { setting, truth } = stored.settings[0];
  const own = { thicknessMm: setting.thicknessMm, truth };
  if (question === "time") return [own];
  const others = THICKER.filter((thicker) => thicker !== 1).map((thicker) => {
    const thicknessMm = thicker * setting.thicknessMm;
    return { thicknessMm, truth: emulatedTruth({ world, emulator, setting: { ...setting, thicknessMm } }) };
  });
  return [own, ...others];
}

export { planRows } from "./plan-rows";
