import { fail } from "../../check/check";
import type { KitchenTrial } from "../kitchen";
import { sessionOf } from "./session-of";

/** Which trials of a log are asked for; what is left out is not asked for. */
export interface TrialsWhere {
  readonly variantId?: string;
  readonly panId?: string;
  readonly applianceId?: string;
  /** the morning: its name, or else the day, as `2026-03-14` */
  readonly session?: string;
  readonly cook?: string;
  /** from and to, both counted in (mm) */
  readonly thicknessMm?: readonly [number, number];
  /** from and to, both counted in (°C) */
  readonly setpointC?: readonly [number, number];
  /** first and last day, both counted in, as `2026-03-14` */
  readonly days?: readonly [string, string];
}

/**
 * The trials of a log that match, in the log's order.
 *
 * @param trials as `loadKitchen` gives them
 * @returns none when none matches; throws when a range is the wrong way round
 * @example
 * trialsWhere(loadKitchen().trials, { variantId: "beet-lentil", thicknessMm: [9, 12] }).length; // → 9
 */
export function trialsWhere(trials: readonly KitchenTrial[], where: TrialsWhere): readonly KitchenTrial[] {
  for (const field of ["thicknessMm", "setpointC", "days"] as const) {
    const range = where[field];
    if (range !== undefined && range[0] > range[1]) fail(`trialsWhere: ${field}`, "must run from low to high", range);
  }
  const isIn = <T extends number | string>(value: T, range: readonly [T, T] | undefined): boolean =>
    range === undefined || (value >= range[0] && value <= range[1]);
  const is = (value: string | null, wanted: string | undefined): boolean => wanted === undefined || value === wanted;
  return trials.filter(
    (trial) =>
      is(trial.variantId, where.variantId) &&
      is(trial.panId, where.panId) &&
      is(trial.applianceId, where.applianceId) &&
      is(sessionOf(trial), where.session) &&
      is(trial.cook, where.cook) &&
      isIn(trial.thicknessMm, where.thicknessMm) &&
      isIn(trial.setpointC, where.setpointC) &&
      isIn(trial.date, where.days),
  );
}
