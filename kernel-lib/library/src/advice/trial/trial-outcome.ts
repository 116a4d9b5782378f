import { type MeasuredFailuresOptions, measuredFailures } from "./measured-failures";

/** How a trial came out, the gravest first. */
export const TRIAL_OUTCOMES = ["cold core", "too brown", "soft", "crisp, core not read", "crisp", "not told"] as const;

/** How a trial came out, in a word or two. */
export type TrialOutcome = (typeof TRIAL_OUTCOMES)[number];

/**
 * How a trial came out, by what was measured alone: a core below its limit comes first, then colour, then crispness. Crisp
 * pieces whose core nobody read are not called done.
 *
 * @example
 * const kitchen = loadKitchen();
 * trialOutcome({ kitchen, trial: trialOf(kitchen, "BL-14") }); // → "soft"
 */
export function trialOutcome(options: MeasuredFailuresOptions): TrialOutcome {
  const { core, browning, crust } = measuredFailures(options);
  if (core === true) return "cold core";
  if (browning === true) return "too brown";
  if (crust === true) return "soft";
  if (crust === null) return "not told";
  return core === null ? "crisp, core not read" : "crisp";
}
