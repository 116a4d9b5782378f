import { fail } from "../../../check/check";
import { isUnknown } from "../../../units/typed/unknown-mark";
import type { Trial } from "../../trial";

/** A trial as one line of JSON Lines: its fields by name, in kitchen units; what is not known is left out. */
export function trialJson(trial: Trial): string {
  const known = Object.entries(trial).filter(([name, value]) => {
    if (name === "coreC") return value !== null && trial.coresC.length === 0;
    if (
      typeof value === "string" &&
      name !== "note" &&
      name !== "trialId" &&
      (isUnknown(value) || value.trim() !== value)
    )
      fail(`writing trial ${trial.trialId}: ${name}`, "must be a text that does not say that nothing is known", value);
    if (Array.isArray(value)) return value.length > 0;
    return value !== null && value !== undefined && !(name === "extra" && Object.keys(value as object).length === 0);
  });
  return JSON.stringify(Object.fromEntries(known));
}
