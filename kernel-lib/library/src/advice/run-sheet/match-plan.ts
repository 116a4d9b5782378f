import { counted } from "../../check/counted";
import { freezeDeep } from "../../check/freeze-deep";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { ownMassText } from "../../units/mass-text";
import { ownSettingText } from "../../units/setting-text";
import { ownThicknessText } from "../../units/thickness-text";
import type { PlannedRun, TrialPlan } from "./trial-plan";

/** One planned trial, and what was run for it. */
export interface PlanRow {
  readonly planned: PlannedRun;
  /** null while nothing was logged for it */
  readonly trial: KitchenTrial | null;
  /** how it was found: by its name, or as the trial that is nearest to the plan; null while it is open */
  readonly by: "name" | "nearest" | null;
  /** in what it was run otherwise than planned, a few words each */
  readonly deviations: readonly string[];
}

/** What came of a plan. */
export interface PlanMatch {
  readonly kind: "plan match";
  readonly plan: TrialPlan;
  readonly rows: readonly PlanRow[];
  /** trials of its variants that were logged since and are none of the plan's */
  readonly unplanned: readonly string[];
  readonly sentence: string;
}

/** What `matchPlan` works from. */
export interface MatchPlanOptions {
  readonly kitchen: Kitchen;
  readonly plan: TrialPlan;
}

/** How far from the plan a trial under another name may lie and still be its own; in the steps below, our judgement. */
const NEAR = 2;
/** What counts as one step apart: a tenth of a batch, 10 K, a third of the time; another pan counts as one. */
const BATCH_STEP = 0.1;
const SETPOINT_STEP_K = 10;
const TIME_STEP = 0.3;
/** What is said to differ: a scale, a dial and a clock read as finely; our judgement. */
const SAID = { batch: 0.03, thickness: 0.06, setpointK: 1, load: 0.1, timeMin: 0.5 } as const;

/**
 * Holds a log against a plan: each planned trial is found by its name, else as the nearest trial of its variant in its appliance that
 * was logged since the plan was made; in what it differs is kept and said. A core that was not read is always said.
 *
 * @example
 * const kitchen = loadKitchen();
 * const trials = [{ variantId: "beet-lentil", timeMin: 10 }];
 * const plan = trialPlan({ kitchen, name: "monday", trials, today: "2026-05-04" });
 * matchPlan({ kitchen, plan }).sentence; // → "Of 1 trial planned under monday none is logged yet."
 */
export function matchPlan({ kitchen, plan }: MatchPlanOptions): PlanMatch {
  const variants = new Set(plan.trials.map(({ variantId }) => variantId));
  const names = new Set(plan.trials.map(({ trialId }) => trialId));
  const before = new Set(plan.loggedBefore);
  const since = kitchen.trials.filter(
    (trial) => variants.has(trial.variantId) && trial.date >= plan.madeOn && !before.has(trial.trialId),
  );
  const found = new Map<PlannedRun, { readonly trial: KitchenTrial; readonly by: "name" | "nearest" }>();
  for (const planned of plan.trials) {
    const trial = kitchen.trials.find(({ trialId }) => trialId === planned.trialId);
    if (trial !== undefined) found.set(planned, { trial, by: "name" });
  }
  const free = new Set(since.filter(({ trialId }) => !names.has(trialId)));
  const pairs = plan.trials
    .filter((planned) => !found.has(planned))
    .flatMap((planned) => [...free].map((trial) => ({ planned, trial, apart: apartBy(planned, trial) })))
    .filter(({ apart }) => apart <= NEAR)
    .sort((a, b) => a.apart - b.apart || a.planned.run - b.planned.run);
  for (const { planned, trial } of pairs) {
    if (found.has(planned) || !free.has(trial)) continue;
    found.set(planned, { trial, by: "nearest" });
    free.delete(trial);
  }
  const rows = plan.trials.map((planned): PlanRow => {
    const match = found.get(planned);
    if (match === undefined) return { planned, trial: null, by: null, deviations: [] };
    return { planned, ...match, deviations: deviationsOf(kitchen, planned, match.trial, match.by) };
  });
  return freezeDeep({
    kind: "plan match",
    plan,
    rows,
    unplanned: [...free].map(({ trialId }) => trialId),
    sentence: sentenceOf(plan, rows, free.size),
  });
}

/** How far a trial is from what was planned, in steps; Infinity for another variant or appliance. */
function apartBy(planned: PlannedRun, trial: KitchenTrial): number {
  if (trial.variantId !== planned.variantId || trial.applianceId !== planned.applianceId)
    return Number.POSITIVE_INFINITY;
  const size =
    trial.batchG !== null && trial.panId === planned.panId
      ? Math.log(trial.batchG / planned.batchG)
      : planned.thicknessMm === undefined
        ? 0
        : Math.log(trial.thicknessMm / planned.thicknessMm);
  return Math.hypot(
    size / BATCH_STEP,
    (trial.setpointC - planned.setpointC) / SETPOINT_STEP_K,
    planned.timeMin === undefined ? 0 : Math.log(trial.timeMin / planned.timeMin) / TIME_STEP,
    trial.panId === planned.panId ? 0 : 1,
  );
}

function deviationsOf(
  kitchen: Kitchen,
  planned: PlannedRun,
  trial: KitchenTrial,
  by: "name" | "nearest",
): readonly string[] {
  const { units } = kitchen;
  const said: string[] = [];
  const instead = (is: string, was: string): void => {
    said.push(`${is}, not ${was}`);
  };
  if (by === "nearest") instead(`logged as ${trial.trialId}`, planned.trialId);
  if (trial.variantId !== planned.variantId)
    instead(variantOf(kitchen, trial.variantId).name, variantOf(kitchen, planned.variantId).name);
  if (trial.panId !== planned.panId)
    instead(`on the ${panOf(kitchen, trial.panId).name}`, panOf(kitchen, planned.panId).name);
  if (trial.applianceId !== planned.applianceId)
    instead(`in the ${applianceOf(kitchen, trial.applianceId).name}`, applianceOf(kitchen, planned.applianceId).name);
  if (trial.batchG !== null && Math.abs(trial.batchG / planned.batchG - 1) > SAID.batch)
    instead(ownMassText(trial.batchG, units), ownMassText(planned.batchG, units));
  if (planned.thicknessMm !== undefined && Math.abs(trial.thicknessMm / planned.thicknessMm - 1) > SAID.thickness)
    instead(`${ownThicknessText(trial.thicknessMm, units)} thick`, ownThicknessText(planned.thicknessMm, units));
  if (Math.abs(trial.setpointC - planned.setpointC) > SAID.setpointK)
    instead(ownSettingText(trial.setpointC, units), ownSettingText(planned.setpointC, units));
  if (
    planned.loadFraction !== undefined &&
    trial.loadFraction !== null &&
    Math.abs(trial.loadFraction - planned.loadFraction) > SAID.load
  )
    instead(`${Math.round(100 * trial.loadFraction)} % of the floor`, `${Math.round(100 * planned.loadFraction)} %`);
  if (isAnotherTime(planned, trial)) instead(`out at ${trial.timeMin} min`, `${planned.timeMin} min`);
  if (
    (planned.looksMin ?? []).length > 0 &&
    trial.looksMin.length === 0 &&
    trial.crispMin === null &&
    trial.notCrispMin === null
  )
    said.push("no look is logged");
  if (trial.coreC === null && trial.restedCoreC === null) said.push("no core is logged");
  return said;
}

/** Out later than planned, or earlier: where looks were planned, as soon as the pieces were seen crisp is as planned. */
function isAnotherTime({ timeMin, looksMin = [] }: PlannedRun, trial: KitchenTrial): boolean {
  if (timeMin === undefined) return false;
  const from = trial.crispMin !== null && looksMin.length > 0 ? looksMin[0] : timeMin;
  return trial.timeMin > timeMin + SAID.timeMin || trial.timeMin < from - SAID.timeMin;
}

function sentenceOf({ name }: TrialPlan, rows: readonly PlanRow[], unplanned: number): string {
  const done = rows.filter(({ trial }) => trial !== null);
  const otherwise = done.filter(({ deviations }) => deviations.length > 0);
  const parts = [
    `Of ${counted(rows.length, "trial")} planned under ${name} ${done.length === 0 ? "none is logged yet" : `${done.length} ${done.length === 1 ? "is" : "are"} logged`}.`,
    ...(otherwise.length === 0
      ? []
      : [
          `Run otherwise than planned: ${otherwise.map(({ planned, deviations }) => `${planned.trialId} (${deviations.join("; ")})`).join(", ")}.`,
        ]),
    ...(unplanned === 0
      ? []
      : [`${counted(unplanned, "trial")} more ${unplanned === 1 ? "was" : "were"} logged since, not of the plan.`]),
  ];
  return parts.join(" ");
}
