/**
 * Time of heating that a look takes (min): the appliance stands open for 3 to 10 s, and then its air, 30 to 70 K colder, comes back
 * within half a minute or a whole: t_open + τ·ΔT/(T_air − T_surface), 0.1 to 0.5 min; our judgement.
 */
export const LOOK_MIN = 0.2;

/**
 * Time for which a piece was heated (min): what passed less what each look before took, at least half of it.
 *
 * @param looksMin when the appliance was opened (min)
 * @param timeMin time in the appliance (min)
 * @param lookMin time of heating that a look takes (min): a piece's own for its core, the usual for its crust, whose first drying a log
 * does not tell from looks
 */
export function heatedMin(looksMin: readonly number[], timeMin: number, lookMin: number = LOOK_MIN): number {
  let looks = 0;
  for (const look of looksMin) if (look < timeMin) looks++;
  return Math.max(0.5 * timeMin, timeMin - lookMin * looks);
}
