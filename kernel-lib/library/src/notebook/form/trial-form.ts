import { matchPlan } from "../../advice/run-sheet/match-plan";
import { runSheet } from "../../advice/run-sheet/run-sheet";
import type { PlannedRun } from "../../advice/run-sheet/trial-plan";
import { freezeDeep } from "../../check/freeze-deep";
import { bothLimits, limitCaution } from "../../safety/limit-text";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { type Holding, LOG_FIELDS, type LogName, logField, logHeading } from "../../trials/log/log-fields";
import { nextId } from "../../trials/log/new-trial";
import { convertUnit } from "../../units/convert-unit";
import type { KitchenUnits } from "../../units/unit-table";
import { kitchenFolder } from "../kitchen-folder-of";
import { openKitchen } from "../log-file/trial-log";
import { loadPlan, planNames } from "../plans/save-plan";

/** One field of the form: a column of a log in the kitchen's units. */
export interface TrialFormField {
  readonly name: LogName;
  /** as a log has it: `"thickness_mm"` */
  readonly heading: string;
  /** as a person says it: `"thickness"` */
  readonly label: string;
  /** `"mm"`; null where there is none */
  readonly unit: string | null;
  readonly holds: Holding;
  /** several values */
  readonly many: boolean;
}

/** A product as the form begins with it. */
export interface TrialFormVariant {
  readonly variantId: string;
  readonly name: string;
  /** name of its next trial */
  readonly nextId: string;
  /** what the form begins with, by heading */
  readonly cells: Readonly<Record<string, string>>;
  /** mass of mix on its pan, as a hint: it counts as weighed only when it is typed */
  readonly batchHint: string;
  /** what every core must reach, in both units */
  readonly coreLimit: string;
  readonly caution: string;
}

/** A planned trial that nothing was logged for yet. */
export interface TrialFormPlanned {
  readonly trialId: string;
  readonly variantId: string;
  /** what it begins with, by heading, over what its product begins with */
  readonly cells: Readonly<Record<string, string>>;
  /** batch, cut, setting, looks in one line */
  readonly words: string;
}

/** A plan of the kitchen with what is still open of it. */
export interface TrialFormPlan {
  readonly name: string;
  readonly trials: readonly TrialFormPlanned[];
  /** why it could not be read, or does not fit the kitchen any more; null where it can be run */
  readonly problem: string | null;
}

/** What a form for one trial needs to know of a kitchen. */
export interface TrialForm {
  readonly kind: "trial form";
  readonly name: string;
  readonly units: KitchenUnits;
  readonly fields: readonly TrialFormField[];
  readonly variants: readonly TrialFormVariant[];
  readonly pans: readonly { readonly id: string; readonly name: string }[];
  readonly appliances: readonly { readonly id: string; readonly name: string }[];
  /** of the folder `plans` */
  readonly plans: readonly TrialFormPlan[];
  /** slips of `day.csv`, `pantry.csv` and `packs.csv`, which stop no trial, a sentence each */
  readonly notices: readonly string[];
}

/** How units are written beside a field; others as the heading ends. */
const WRITTEN: Readonly<Record<string, string>> = { c: "°C", f: "°F" };

/**
 * What a form for one trial needs to know of a kitchen: its fields in the kitchen's units, its pans and appliances, and for each product
 * what the form begins with and the core that it must reach; with what is open of the kitchen's plans.
 *
 * @param folder the kitchen's folder; throws, with every problem, when what trials rest on is not sound
 *
 * @example
 * trialForm("data").variants[0].nextId; // → "BL-33"
 */
export function trialForm(folder?: string): TrialForm {
  const place = kitchenFolder(folder, "trialForm: folder");
  const { kitchen, aside } = openKitchen(place, "trialForm: folder");
  const { name, units, pans, appliances } = kitchen;
  const plans = planNames(place).map((plan) => formPlan(plan, place, kitchen));
  // a trial that nobody planned takes no name of one that is planned
  const planned = plans.flatMap(({ trials }) => trials.map(({ trialId, variantId }) => ({ trialId, variantId })));
  return freezeDeep({
    kind: "trial form",
    name,
    units,
    fields: LOG_FIELDS.map((field) => {
      const { column, endings, holds, many } = field;
      const unit = endings === null ? null : (WRITTEN[endings[units]] ?? endings[units]);
      const label = column.replaceAll("_", " ");
      return { name: field.name, heading: logHeading(field, units), label, unit, holds, many };
    }),
    variants: kitchen.variants.map((variant) => formVariant(variant, kitchen, [...kitchen.trials, ...planned])),
    pans: pans.map((pan) => ({ id: pan.id, name: pan.name })),
    appliances: appliances.map((one) => ({ id: one.applianceId, name: one.name })),
    plans,
    notices: aside,
  });
}

/** What is open of a plan; a plan that cannot be read or run any more stops no form. */
function formPlan(name: string, folder: string, kitchen: Kitchen): TrialFormPlan {
  try {
    const plan = loadPlan(name, { folder });
    const { lines } = runSheet({ kitchen, plan });
    const open = new Set(
      matchPlan({ kitchen, plan }).rows.flatMap(({ planned, trial }) => (trial === null ? [planned.run] : [])),
    );
    const trials = plan.trials
      .map((planned, at) => plannedCells(planned, kitchen.units, lines[at].sentence))
      .filter((_, at) => open.has(plan.trials[at].run));
    return { name, trials, problem: null };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { name, trials: [], problem: error.message };
  }
}

/** What is set on purpose; what must be weighed or seen stays open. */
function plannedCells(planned: PlannedRun, units: KitchenUnits, words: string): TrialFormPlanned {
  const { trialId, variantId, panId, applianceId, setpointC, loadFraction, purpose } = planned;
  const cells: Partial<Record<LogName, string>> = {
    trialId,
    variantId,
    panId,
    applianceId,
    setpointC: shown(units === "us" ? convertUnit({ value: setpointC, from: "°C", to: "°F" }) : setpointC),
    ...(loadFraction === undefined ? {} : { loadFraction: String(Number(loadFraction.toFixed(2))) }),
    ...(purpose === undefined ? {} : { note: purpose }),
  };
  return { trialId, variantId, cells: byHeading(cells, units), words };
}

function byHeading(cells: Partial<Record<LogName, string>>, units: KitchenUnits): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(cells).map(([field, text]) => [headingOf(field as LogName, units), text]));
}

function formVariant(
  variant: KitchenVariant,
  kitchen: Kitchen,
  named: readonly { readonly trialId: string; readonly variantId: string }[],
): TrialFormVariant {
  const { units } = kitchen;
  const { variantId, name, panId, applianceId, setpointC, startC, batchG, limit } = variant;
  const us = units === "us";
  const degrees = (value: number): string => shown(us ? convertUnit({ value, from: "°C", to: "°F" }) : value);
  const cells: Partial<Record<LogName, string>> = {
    variantId,
    panId,
    applianceId,
    setpointC: degrees(setpointC),
    startC: degrees(startC),
  };
  return {
    variantId,
    name,
    nextId: nextId({ trials: named }, variantId),
    cells: byHeading(cells, units),
    batchHint: shown(us ? convertUnit({ value: batchG, from: "g", to: "oz" }) : batchG),
    coreLimit: bothLimits(limit, units),
    caution: limitCaution(limit, units),
  };
}

function headingOf(name: LogName, units: KitchenUnits): string {
  const field = logField(name);
  return field === undefined ? name : logHeading(field, units);
}

function shown(value: number): string {
  return String(Number(value.toFixed(1)));
}
