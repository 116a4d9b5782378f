import { within } from "../../check/check";

/**
 * Up to this share of the floor pieces lie loose in one layer (common practice, from memory: 0.5 to 0.7): what a setting
 * has unless it says otherwise, and a trial that logged no load counts as.
 */
export const LOOSE_LOAD = 0.6;
/**
 * Up to this share a trial still serves a curve that knows no load: as crowded as that, it loses about 5 % of the
 * coefficient by the usual prior, no more than runs differ by; our judgement.
 */
export const LARGEST_CURVE_LOAD = 0.7;
/** Air falls this far below the setpoint at a full floor (K): our rule of thumb, held fixed. */
export const FULL_LOAD_DROP_K = 5;

/** How crowded the floor is: 0 up to a loose single layer, 1 when it is covered. */
export function crowdingOf(loadFraction: number | null): number {
  if (loadFraction === null) return 0;
  return Math.max(0, within(loadFraction, 0, 1.2, "crowdingOf: loadFraction", "") - LOOSE_LOAD) / (1 - LOOSE_LOAD);
}

/** Air at the pieces (°C): the setpoint, less up to 5 K on a crowded floor. */
export function airAtLoadC(setpointC: number, loadFraction: number | null): number {
  return setpointC - FULL_LOAD_DROP_K * crowdingOf(loadFraction);
}

/** The coefficient for a load and a turn (W/(m²·K)): h·(1 − loss·crowding)·(1 + gain when turned), loss kept below 0.8. */
export function coefficientAtLoad(
  looseWm2K: number,
  loadLoss: number,
  crowding: number,
  turnGain: number,
  turned: boolean,
): number {
  return looseWm2K * Math.max(0.2, 1 - loadLoss * crowding) * (turned ? Math.max(0.5, 1 + turnGain) : 1);
}
