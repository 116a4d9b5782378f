import { fail, within } from "../../check/check";

/** Between which temperatures a slab can be cut cleanly. */
export interface CuttingLimits {
  /** soft above: the mean must be at or below this [°C] */
  readonly softAboveC: number;
  /** brittle below: no part of the slab may be colder than this [°C] */
  readonly brittleBelowC: number;
}

/**
 * Cutting limits when the user has none: mean at −3 °C or colder, nothing colder than −10 °C. Common practice of
 * tempering blocks for the knife, no source; a saltier mix wants both lower. Note your own and pass them.
 */
export const CUTTING_LIMITS: CuttingLimits = Object.freeze({ softAboveC: -3, brittleBelowC: -10 });

/** Checks cutting limits against the food's freezing point. */
export function checkCuttingLimits(limits: CuttingLimits, freezingPointC: number, where: string): CuttingLimits {
  within(limits.softAboveC, -30, -0.1, `${where}: limits.softAboveC`, "°C");
  within(limits.brittleBelowC, -60, -0.1, `${where}: limits.brittleBelowC`, "°C");
  if (!(limits.brittleBelowC < limits.softAboveC))
    fail(`${where}: limits.brittleBelowC`, `must be below softAboveC (${limits.softAboveC} °C)`, limits.brittleBelowC);
  if (!(limits.softAboveC < freezingPointC))
    fail(
      `${where}: limits.softAboveC`,
      `must be below the mix's freezing point of ${freezingPointC} °C`,
      limits.softAboveC,
    );
  return limits;
}
