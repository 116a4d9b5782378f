import { freezeDeep } from "../../check/freeze-deep";
import type { Kitchen } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { massText } from "../../units/mass-text";
import { ownSettingText } from "../../units/setting-text";
import { ownThicknessText } from "../../units/thickness-text";
import { type BenchSheet, benchSheet, cutWords } from "../trial/bench-sheet";
import type { PlannedRun, TrialPlan } from "./trial-plan";

/** A trial of a plan in words, in its turn. */
export interface RunLine {
  readonly run: number;
  readonly session: number;
  readonly trialId: string;
  readonly variantName: string;
  /** mix and pan: `"700 g on the quarter sheet"` */
  readonly batch: string;
  /** thickness and cut; empty where neither is known */
  readonly cut: string;
  /** `"190 °C in the small basket, 60 % of the floor"` */
  readonly setting: string;
  /** when to look and take out */
  readonly times: string;
  readonly purpose: string;
  /** all of it in one line */
  readonly sentence: string;
}

/** A plan as it is run: an overview, and the blanks for what will be measured. */
export interface RunSheet {
  readonly kind: "run sheet";
  readonly name: string;
  readonly kitchenName: string;
  readonly lines: readonly RunLine[];
  readonly sheet: BenchSheet;
  /** core limits and what goes with them, to stand on every page */
  readonly cautions: readonly string[];
}

/** What `runSheet` works from. */
export interface RunSheetOptions {
  readonly kitchen: Kitchen;
  readonly plan: TrialPlan;
}

/**
 * The sheet to run a plan by: every trial in its turn with batch, pan, cut, setting, looks and what it is for, and a `benchSheet` with
 * the blanks for what is measured, core and its limit among them.
 *
 * @throws when a variant, pan or appliance of the plan is not the kitchen's any more
 * @example
 * const kitchen = loadKitchen();
 * const trials = [{ variantId: "beet-lentil", timeMin: 10, looksMin: [8, 9] }];
 * const plan = trialPlan({ kitchen, name: "monday", trials, today: "2026-05-04" });
 * runSheet({ kitchen, plan }).lines[0].times; // → "look at 8, 9 min; out at 10 min"
 */
export function runSheet({ kitchen, plan }: RunSheetOptions): RunSheet {
  const sheet = benchSheet({ kitchen, trials: plan.trials });
  return freezeDeep({
    kind: "run sheet",
    name: plan.name,
    kitchenName: kitchen.name,
    lines: plan.trials.map((trial) => lineOf(kitchen, trial)),
    sheet,
    cautions: sheet.cautions,
  });
}

function lineOf(kitchen: Kitchen, trial: PlannedRun): RunLine {
  const { units } = kitchen;
  const { run, session, trialId, batchG, thicknessMm, setpointC, loadFraction, looksMin = [], timeMin } = trial;
  const variant = variantOf(kitchen, trial.variantId);
  const pan = panOf(kitchen, trial.panId);
  const batch = `${massText(batchG, units)} on the ${pan.name}`;
  const cut = [
    ...(thicknessMm === undefined ? [] : [`about ${ownThicknessText(thicknessMm, units)}`]),
    ...(cutWords({ kitchen, variant, pan, batchG }) === null ? [] : [cutWords({ kitchen, variant, pan, batchG })]),
  ].join(", ");
  const floor = loadFraction === undefined ? "" : `, ${Math.round(100 * loadFraction)} % of the floor`;
  const setting = `${ownSettingText(setpointC, units)} in the ${applianceOf(kitchen, trial.applianceId).name}${floor}`;
  const looks = looksMin.filter((look) => look !== timeMin);
  const times = [
    ...(looks.length === 0 ? [] : [`look at ${looks.join(", ")} min`]),
    ...(timeMin === undefined ? [] : [`out at ${timeMin} min`]),
  ].join("; ");
  const purpose = trial.purpose ?? "";
  return {
    run,
    session,
    trialId,
    variantName: variant.name,
    batch,
    cut,
    setting,
    times,
    purpose,
    sentence: [batch, cut, setting, times].filter((part) => part !== "").join("; "),
  };
}
