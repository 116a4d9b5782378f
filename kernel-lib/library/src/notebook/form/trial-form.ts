import { freezeDeep } from "../../check/freeze-deep";
import { bothLimits, limitCaution } from "../../safety/limit-text";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { type Holding, LOG_FIELDS, type LogName, logField, logHeading } from "../../trials/log/log-fields";
import { nextId } from "../../trials/log/new-trial";
import { convertUnit } from "../../units/convert-unit";
import type { KitchenUnits } from "../../units/unit-table";
import { kitchenFolder } from "../kitchen-folder-of";
import { openKitchen } from "../log-file/trial-log";

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

/** What a form for one trial needs to know of a kitchen. */
export interface TrialForm {
  readonly kind: "trial form";
  readonly name: string;
  readonly units: KitchenUnits;
  readonly fields: readonly TrialFormField[];
  readonly variants: readonly TrialFormVariant[];
  readonly pans: readonly { readonly id: string; readonly name: string }[];
  readonly appliances: readonly { readonly id: string; readonly name: string }[];
}

/** How units are written beside a field; others as the heading ends. */
const WRITTEN: Readonly<Record<string, string>> = { c: "°C", f: "°F" };

/**
 * What a form for one trial needs to know of a kitchen: its fields in the kitchen's units, its pans and appliances, and for each product
 * what the form begins with and the core that it must reach.
 *
 * @param folder the kitchen's folder; throws, with every problem, when it is not sound
 *
 * @example
 * trialForm("data").variants[0].nextId; // → "BL-33"
 */
export function trialForm(folder?: string): TrialForm {
  const { kitchen } = openKitchen(kitchenFolder(folder, "trialForm: folder"), "trialForm: folder");
  const { name, units, pans, appliances } = kitchen;
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
    variants: kitchen.variants.map((variant) => formVariant(variant, kitchen)),
    pans: pans.map((pan) => ({ id: pan.id, name: pan.name })),
    appliances: appliances.map((one) => ({ id: one.applianceId, name: one.name })),
  });
}

function formVariant(variant: KitchenVariant, kitchen: Kitchen): TrialFormVariant {
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
    nextId: nextId(kitchen, variantId),
    cells: Object.fromEntries(Object.entries(cells).map(([field, text]) => [headingOf(field as LogName, units), text])),
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
