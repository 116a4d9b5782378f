import { tooLittle } from "../../check/too-little";
import type { KitchenTrial } from "../../trials/kitchen";
import {
  type GroupTrialsOptions,
  groupTrials,
  type TrialGroup,
  type TrialGroupKey,
} from "../../trials/questions/group-trials";
import { TRIAL_QUANTITIES } from "../../trials/questions/trial-quantity";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Table } from "../table/table";
import { ownNumber } from "./own-number";

/** What `trialGroupsTable` shows. */
export interface TrialGroupsTableOptions extends GroupTrialsOptions {
  readonly trials: readonly KitchenTrial[];
  readonly units: KitchenUnits;
}

/**
 * A number of the trials by what they have in common: count, mean, standard deviation, 95 % interval of the mean, and the
 * trials that do not tell it.
 *
 * @throws too little, in words, where no trial tells the number
 * @example
 * const { trials, units } = loadKitchen();
 * trialGroupsTable({ trials, units, by: ["variant"], of: "lossPercent" }).rows.length; // → 5
 */
export function trialGroupsTable({ trials, units, by, of, bandMm }: TrialGroupsTableOptions): Table {
  const groups = inOrder(groupTrials(trials, { by, of, bandMm }), by);
  const { heading } = TRIAL_QUANTITIES[of];
  if (groups.length === 0)
    tooLittle("trialGroupsTable", `No trial tells its ${heading} yet: log it with the next one.`);
  const [, what, unit] = /^(.*) \((.*)\)$/.exec(heading) as RegExpExecArray;
  const own = ownNumber(unit, units);
  const { decimals } = own;
  const column = (name: string): { heading: string; decimals: number } => ({
    heading: `${name} (${own.unit})`,
    decimals,
  });
  return {
    kind: "table",
    title: `${what[0].toUpperCase()}${what.slice(1)} by ${by.join(" and ")}`,
    columns: [
      ...by.map((name) => ({ heading: name })),
      { heading: "trials", decimals: 0 },
      column("mean"),
      column("sd"),
      column("95 %, from"),
      column("95 %, to"),
      { heading: "not told by" },
    ],
    rows: groups.map(({ key, n, mean, sd, confidence95, silent }) => [
      ...key.map((text, at) => keyIn(text, by[at], units)),
      n,
      own.of(mean),
      sd === null ? null : own.of(mean + sd) - own.of(mean),
      ...(confidence95 === null ? [null, null] : confidence95.map(own.of)),
      silent.length === 0 ? null : silent.join(", "),
    ]),
    notes: [
      "The interval is that of the mean, from Student's t. Trials of one morning or one slab are more alike than it counts them.",
    ],
  };
}

/** Settings and bands from low to high; all else in the order of the log. */
function inOrder(groups: readonly TrialGroup[], by: readonly TrialGroupKey[]): readonly TrialGroup[] {
  const firsts = by.map((_, at) => [...new Set(groups.map(({ key }) => key[at]))]);
  const placeOf = (text: string, at: number): number =>
    by[at] === "setpoint" || by[at] === "thickness band" ? Number.parseFloat(text) : firsts[at].indexOf(text);
  return groups.toSorted((a, b) => {
    const at = a.key.findIndex((text, index) => text !== b.key[index]);
    return at < 0 ? 0 : placeOf(a.key[at], at) - placeOf(b.key[at], at);
  });
}

function keyIn(text: string, by: TrialGroupKey, units: KitchenUnits): string {
  if (by === "setpoint") return ownSettingText(Number(text), units);
  if (by !== "thickness band" || units === "metric") return text;
  const [from, to] = text.replace(" mm", "").split(" to ").map(Number);
  return thicknessWords([from, to], units);
}
