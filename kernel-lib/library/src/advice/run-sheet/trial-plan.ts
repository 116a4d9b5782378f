import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { runOrder } from "../../plan/factor/run-order";
import type { Kitchen } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { nextId } from "../../trials/log/new-trial";
import type { PlannedTrial } from "../trial/bench-sheet";

/** One trial of a plan in its turn: all that is set on purpose is said. */
export interface PlannedRun extends PlannedTrial {
  readonly trialId: string;
  readonly panId: string;
  readonly applianceId: string;
  readonly batchG: number;
  readonly setpointC: number;
  readonly session: number;
  /** when it is run, from 1 */
  readonly run: number;
}

/** Trials that are going to be run, in order: what `savePlan` keeps in the kitchen. */
export interface TrialPlan {
  readonly kind: "trial plan";
  /** letters, digits, points and dashes: its file is called so */
  readonly name: string;
  /** day on which it was made, as `2026-03-14` */
  readonly madeOn: string;
  /** null where the order was given */
  readonly seed: number | null;
  readonly trials: readonly PlannedRun[];
  /** trials of that day which were logged before the plan was made: none of the plan's */
  readonly loggedBefore: readonly string[];
}

/** What `trialPlan` works from. */
export interface TrialPlanOptions {
  readonly kitchen: Kitchen;
  /** letters, digits, points and dashes */
  readonly name: string;
  /** from `plannedTrials`, from `nextTrial`'s candidates with their variant, or by hand */
  readonly trials: readonly PlannedTrial[];
  /** as `2026-03-14` */
  readonly today: string;
  /** trials of a morning, where they do not say which they belong to; 6 unless given */
  readonly perSession?: number;
  /** names that other plans hold (`plannedNames`): no trial of this one takes them; none unless given */
  readonly taken?: readonly string[];
  /** a seed puts the trials of every morning into a random order; without one they stay in the order given */
  readonly seed?: number;
}

/** What a file of a plan may be called. */
export const PLAN_NAME: RegExp = /^[A-Za-z0-9][A-Za-z0-9._-]{0,59}$/;
/** Loads of a morning: as many as the first morning has; our judgement. */
const USUAL_LOADS = 6;

/**
 * A plan of trials in the order in which to run them: each with its name, morning, pan, batch, appliance and setting, what was left
 * open being the variant's own. With a seed the trials of a morning are shuffled, so that what drifts over a morning falls on no
 * setting on purpose. The same kitchen, trials and seed give the same plan to the digit.
 *
 * @throws where a variant, pan or appliance is not the kitchen's, a name is taken, or nothing is planned
 * @example
 * const kitchen = loadKitchen();
 * const trials = [{ variantId: "beet-lentil", timeMin: 10 }, { variantId: "beet-lentil", timeMin: 12 }];
 * const plan = trialPlan({ kitchen, name: "monday", trials, today: "2026-05-04" });
 * plan.trials.map(({ trialId, timeMin }) => `${trialId} ${timeMin}`); // → ["BL-33 10", "BL-34 12"]
 */
export function trialPlan(options: TrialPlanOptions): TrialPlan {
  const where = "trialPlan";
  const { kitchen, name, trials, today, perSession = USUAL_LOADS, seed, taken = [] } = options;
  if (!PLAN_NAME.test(name)) fail(`${where}: name`, "must be up to 60 letters, digits, points and dashes", name);
  if (!/^\d{4}-\d\d-\d\d$/.test(today)) fail(`${where}: today`, "must be a day such as 2026-03-14", today);
  if (trials.length === 0) fail(`${where}: trials`, "must hold a trial to run", "none");
  if (!(Number.isInteger(perSession) && perSession >= 1))
    fail(`${where}: perSession`, "must be a whole number >= 1", perSession);
  const sessions = trials.map(({ session }, at) => session ?? 1 + Math.floor(at / perSession));
  const wrong = sessions.find((session) => !(Number.isInteger(session) && session >= 1));
  if (wrong !== undefined) fail(`${where}: session`, "must be a whole number from 1", wrong);
  const order =
    seed === undefined
      ? trials.map((_, at) => at).sort((a, b) => sessions[a] - sessions[b] || a - b)
      : runOrder({ points: trials.map((_, at) => [at]), blocks: sessions, seed }).map(({ point: [at] }) => at);
  // of no variant: they are names that are used, and no trial's last one
  const named = taken.map((trialId) => ({ trialId, variantId: "" }));
  const runs = order.map((at, turn): PlannedRun => {
    const trial = trials[at];
    const variant = variantOf(kitchen, trial.variantId);
    const known = [...kitchen.trials, ...named];
    const trialId = trial.trialId ?? nextId({ trials: known }, trial.variantId);
    if (known.some((one) => one.trialId === trialId))
      fail(`${where}: trialId`, "must be a name that no other trial has", trialId);
    named.push({ trialId, variantId: trial.variantId });
    return {
      ...saidOf(trial),
      variantId: trial.variantId,
      trialId,
      panId: panOf(kitchen, trial.panId ?? variant.panId).id,
      applianceId: applianceOf(kitchen, trial.applianceId ?? variant.applianceId).applianceId,
      batchG: trial.batchG ?? variant.batchG,
      setpointC: trial.setpointC ?? variant.setpointC,
      session: sessions[at],
      run: turn + 1,
    };
  });
  const variants = new Set(runs.map(({ variantId }) => variantId));
  return freezeDeep({
    kind: "trial plan",
    name,
    madeOn: today,
    seed: seed ?? null,
    trials: runs,
    loggedBefore: kitchen.trials
      .filter(({ date, variantId }) => date === today && variants.has(variantId))
      .map(({ trialId }) => trialId),
  });
}

/** What a trial says beyond what every run says; other fields, such as a candidate's gain, are no part of a plan. */
function saidOf({ thicknessMm, loadFraction, looksMin, timeMin, purpose }: PlannedTrial): Partial<PlannedTrial> {
  const said: Partial<PlannedTrial> = { thicknessMm, loadFraction, looksMin, timeMin, purpose };
  return Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined));
}
