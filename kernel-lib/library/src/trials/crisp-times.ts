import { fail } from "../check/check";
import type { KitchenUnits } from "../units/unit-table";
import type { Trial } from "./trial";

/** Which trials `crispTimes` takes; what is left out is not asked for. */
export interface CrispTimesOptions {
  readonly variantId?: string;
  readonly applianceId?: string;
  /** setpoint, met within `toleranceK` (°C) */
  readonly setpointC?: number;
  /** how far a trial's setpoint may be off (K); default 1 */
  readonly toleranceK?: number;
  /** trials with a fuller floor than this are left out, as crowding slows them; those that logged no load are taken */
  readonly largestLoadFraction?: number;
  /** units that figures and tables of them are drawn in; default metric */
  readonly units?: KitchenUnits;
}

/** When the pieces of one trial turned crisp, as far as its checks tell. */
export interface CrispTime {
  readonly trialId: string;
  readonly thicknessMm: number;
  /** last check that was not crisp (min); 0 when crisp at the first check */
  readonly lowerMin: number;
  /** first check that was crisp (min); `null` when never crisp while it was watched */
  readonly upperMin: number | null;
  /** middle between the two checks (min); `null` when one of them is missing */
  readonly timeMin: number | null;
}

/** Crisp times for a fit, with what could not serve. */
export interface CrispTimes {
  readonly times: readonly CrispTime[];
  /** one sentence a trial that was asked for but says nothing about crispness */
  readonly notices: readonly string[];
  /** units that figures and tables of them are drawn in */
  readonly units: KitchenUnits;
}

/**
 * The crisp times of the trials that match, as intervals: after the last check that was not crisp and by the first that
 * was. A least-squares fit uses `timeMin`; a fit for censored times uses `lowerMin` and `upperMin`.
 *
 * @param trials with `thicknessMm`, as `loadKitchen` gives them
 * @returns times in order of thickness; throws when no trial matches, naming what was asked
 */
export function crispTimes(
  trials: readonly (Trial & { readonly thicknessMm: number })[],
  options: CrispTimesOptions = {},
): CrispTimes {
  const toleranceK = options.toleranceK ?? 1;
  const matching = trials.filter(
    (trial) =>
      (options.variantId === undefined || trial.variantId === options.variantId) &&
      (options.applianceId === undefined || trial.applianceId === options.applianceId) &&
      (options.setpointC === undefined || Math.abs(trial.setpointC - options.setpointC) <= toleranceK) &&
      (trial.loadFraction ?? 0) <= (options.largestLoadFraction ?? Number.POSITIVE_INFINITY),
  );
  if (matching.length === 0) fail("crispTimes: trials", "must hold one that matches", options);
  const times: CrispTime[] = [];
  const notices: string[] = [];
  for (const trial of matching) {
    const { trialId, thicknessMm, notCrispMin, crispMin } = trial;
    if (notCrispMin === null && crispMin === null) notices.push(`Trial ${trialId} has no crispness check.`);
    else
      times.push({
        trialId,
        thicknessMm,
        lowerMin: notCrispMin ?? 0,
        upperMin: crispMin,
        timeMin: notCrispMin !== null && crispMin !== null ? (notCrispMin + crispMin) / 2 : null,
      });
  }
  const oneSided = times.filter((time) => time.timeMin === null).map((time) => time.trialId);
  if (oneSided.length > 0)
    notices.push(
      `Seen from one side only, so not in a least-squares fit: ${oneSided.join(", ")} (fit censored times to use them).`,
    );
  return Object.freeze({
    times: times.toSorted((a, b) => a.thicknessMm - b.thicknessMm),
    notices,
    units: options.units ?? "metric",
  });
}
