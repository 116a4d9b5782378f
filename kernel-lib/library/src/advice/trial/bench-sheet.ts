import { fail, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { limitText } from "../../safety/limit-text";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { LOG_FIELDS, type LogName, logHeading, logHeadings } from "../../trials/log/log-fields";
import { nextId } from "../../trials/log/new-trial";
import { batchOnPan } from "../../trials/pieces/batch-on-pan";
import { ownMassText } from "../../units/mass-text";
import { ownSettingText } from "../../units/setting-text";
import { ownTemperatureText } from "../../units/temperature-text";
import { ownThicknessText } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { planCautions } from "./plan-cautions";

/** A trial that is to be run: from `plannedTrials`, or by hand. */
export interface PlannedTrial {
  readonly variantId: string;
  /** the variant's own unless given, as all that follows */
  readonly panId?: string;
  readonly applianceId?: string;
  /** mix to weigh out (g) */
  readonly batchG?: number;
  /** thickness to aim for (mm); not said unless given */
  readonly thicknessMm?: number;
  readonly setpointC?: number;
  /** share of the floor to cover [-]; not said unless given */
  readonly loadFraction?: number;
  /** when to look (min); not said unless given */
  readonly looksMin?: readonly number[];
  /** when to take out (min); not said unless given */
  readonly timeMin?: number;
  /** stands under the note: what the trial is for */
  readonly purpose?: string;
  /** its name; the next free one unless given */
  readonly trialId?: string;
  /** which morning it belongs to, from 1; all one unless given */
  readonly session?: number;
}

/** What `benchSheet` works from. */
export interface BenchSheetOptions {
  readonly kitchen: Kitchen;
  readonly trials: readonly PlannedTrial[];
}

/** A place on the sheet. */
export interface BenchCell {
  /** printed, as it goes into the log; null for a blank */
  readonly printed: string | null;
  /** beside the blank: what is planned, or must be reached; null where there is nothing to say */
  readonly plan: string | null;
}

/** One column of the log, as a line of the sheet. */
export interface BenchRow {
  /** exactly as in the log */
  readonly heading: string;
  /** what to write, in a few words */
  readonly hint: string;
  /** one a trial */
  readonly cells: readonly BenchCell[];
}

/** A sheet for the bench: trials to run, with blanks for what will be measured. */
export interface BenchSheet {
  readonly kind: "bench sheet";
  readonly kitchenName: string;
  readonly units: KitchenUnits;
  /** free names, in the order of the trials */
  readonly trialIds: readonly string[];
  /** which morning each trial belongs to */
  readonly sessions: readonly number[];
  readonly rows: readonly BenchRow[];
  /** core limits and what goes with them, to stand on every page */
  readonly cautions: readonly string[];
}

const HINTS: Partial<Readonly<Record<LogName, string>>> = {
  date: "year-month-day",
  batchG: "mix on the pan, weighed",
  probesMm: "five or more depths, corners and middle",
  setpointC: "air",
  loadFraction: "share of the floor covered",
  startC: "pieces as they go in",
  pieces: "how many are weighed",
  massBeforeG: "these pieces, coated, together",
  flipMin: "turned at",
  looksMin: "opened to look at",
  notCrispMin: "last look, not yet crisp",
  crispMin: "first look, crisp",
  timeMin: "taken out at",
  coresC: "thickest piece, highest within 2 min",
  restMin: "how long after",
  restedCoreC: "if read later; core is then at once",
  massAfterG: "the same pieces",
  crispScores: "0 soft to 9 crisp, as AB:7; CD:6.5",
  brownScores: "0 pale to 9 burnt, the same way",
  slab: "which slab they were cut from",
  cook: "who ran it",
};

/**
 * A sheet to print for the bench: a line for every column of a log, headed exactly as there, in the kitchen's units; names,
 * pan and appliance printed, the plan beside the blank of what must still be weighed or read. What is typed from it goes back
 * by heading: `logTrial({ trial: "OB-07", thickness_mm: "9.1; 8.8", … })`. The core limit stands beside the core's blank, its
 * cautions under the lines.
 *
 * @throws when a variant, pan or appliance is not the kitchen's, or nothing is planned
 * @example
 * const kitchen = loadKitchen();
 * benchSheet({ kitchen, trials: [{ variantId: "beet-lentil", timeMin: 10 }] }).trialIds; // → ["BL-33"]
 */
export function benchSheet({ kitchen, trials }: BenchSheetOptions): BenchSheet {
  if (trials.length === 0) fail("benchSheet: trials", "must hold a trial to run", "none");
  const { units } = kitchen;
  const named: { trialId: string; variantId: string }[] = [];
  const columns = trials.map((trial) => {
    const variant = variantOf(kitchen, trial.variantId);
    const trialId = trial.trialId ?? nextId({ trials: [...kitchen.trials, ...named] }, trial.variantId);
    named.push({ trialId, variantId: trial.variantId });
    return { variant, cells: cellsOf(kitchen, variant, { ...trial, trialId }) };
  });
  const headings = new Set(logHeadings(units));
  const fields = LOG_FIELDS.filter((field) => headings.has(logHeading(field, units)));
  return freezeDeep({
    kind: "bench sheet",
    kitchenName: kitchen.name,
    units,
    trialIds: named.map(({ trialId }) => trialId),
    sessions: trials.map(({ session = 1 }) => session),
    rows: fields.map((field) => ({
      heading: logHeading(field, units),
      hint: HINTS[field.name] ?? "",
      cells: columns.map(({ cells }) => cells[field.name] ?? BLANK),
    })),
    cautions: cautionsOf([...new Set(columns.map(({ variant }) => variant))], units),
  });
}

const BLANK: BenchCell = { printed: null, plan: null };

function cellsOf(
  kitchen: Kitchen,
  variant: KitchenVariant,
  trial: PlannedTrial & { readonly trialId: string },
): Partial<Record<LogName, BenchCell>> {
  const { units } = kitchen;
  const { limit } = variant;
  const {
    batchG = variant.batchG,
    setpointC = variant.setpointC,
    thicknessMm,
    loadFraction,
    looksMin = [],
    timeMin,
  } = trial;
  positive(batchG, `benchSheet: batchG of ${trial.trialId}`, "g");
  for (const [name, value, unit] of [
    ["thicknessMm", thicknessMm, "mm"],
    ["loadFraction", loadFraction, "of the floor"],
    ["timeMin", timeMin, "min"],
    ...looksMin.map((look) => ["looksMin", look, "min"] as const),
  ] as const)
    if (value !== undefined) positive(value, `benchSheet: ${name} of ${trial.trialId}`, unit);
  const printed = (text: string): BenchCell => ({ printed: text, plan: null });
  const beside = (text: string | null): BenchCell => ({ printed: null, plan: text });
  const plan = (text: string | null): BenchCell => beside(text === null ? null : `plan ${text}`);
  return {
    trialId: printed(trial.trialId),
    variantId: printed(variant.variantId),
    panId: printed(panOf(kitchen, trial.panId ?? variant.panId).id),
    applianceId: printed(applianceOf(kitchen, trial.applianceId ?? variant.applianceId).applianceId),
    batchG: plan(ownMassText(batchG, units)),
    probesMm: plan(thicknessMm === undefined ? null : `about ${ownThicknessText(thicknessMm, units)}`),
    setpointC: plan(ownSettingText(setpointC, units)),
    loadFraction: plan(loadFraction === undefined ? null : `${Math.round(100 * loadFraction)} %`),
    startC: plan(ownTemperatureText(variant.startC, units, 0)),
    pieces: beside(cutWords({ kitchen, variant, pan: panOf(kitchen, trial.panId ?? variant.panId), batchG })),
    looksMin: plan(looksMin.length === 0 ? null : `${looksMin.join("; ")} min`),
    timeMin: plan(timeMin === undefined ? null : `${timeMin} min`),
    coresC: beside(`to be eaten: ${limitText(limit, units)} or more${limit.holdS > 0 ? `, for ${limit.holdS} s` : ""}`),
    note: beside(trial.purpose ?? null),
  };
}

/** How a batch on a pan is cut; null where it is baked in wells, or leaves nothing to cut. */
export function cutWords(options: Parameters<typeof batchOnPan>[0]): string | null {
  if (options.variant.form === "batter") return null;
  try {
    const { rows, columns, pieces } = batchOnPan(options).pieces;
    return `cut ${rows} by ${columns} into ${pieces}`;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The cautions of all variants; those of some alone after their names. */
function cautionsOf(variants: readonly KitchenVariant[], units: KitchenUnits): readonly string[] {
  const names = new Map<string, string[]>();
  for (const { name, limit } of variants)
    for (const caution of planCautions(limit, units)) names.set(caution, [...(names.get(caution) ?? []), name]);
  return [...names].map(([caution, of]) => (of.length === variants.length ? caution : `${of.join(", ")}: ${caution}`));
}
