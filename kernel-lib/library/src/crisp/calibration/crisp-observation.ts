import { fail, finite, notNegative, positive, within } from "../../check/check";

/** What one logged trial says to the three clocks; what was not measured is `null`. */
export interface CrispObservation {
  /** name of the trial */
  readonly id: string;
  readonly applianceId: string;
  readonly thicknessMm: number;
  /** standard error of that thickness (mm); 0 when it counts as known */
  readonly thicknessSeMm: number;
  /** air temperature set (°C) */
  readonly setpointC: number;
  /** share of the floor that the pieces cover, 0 to 1.2; `null` counts as a loose single layer */
  readonly loadFraction: number | null;
  /** pieces when they went in (°C) */
  readonly startC: number;
  /** the pieces were turned on the way */
  readonly turned: boolean;
  /** time in the appliance (min) */
  readonly timeMin: number;
  /** latest check that was not crisp (min) */
  readonly notCrispMin: number | null;
  /** earliest check that was crisp (min) */
  readonly crispMin: number | null;
  /** core when taken out (°C) */
  readonly coreC: number | null;
  /** mass lost (% of the mass before) */
  readonly lossPercent: number | null;
  /** scores for crispness and for browning, 0 to 9, one a taster; empty when not scored */
  readonly crispScores: readonly number[];
  readonly brownScores: readonly number[];
}

/** Returns the observation unchanged when it is possible; otherwise throws, naming the trial and the field. */
export function checkObservation(seen: CrispObservation): CrispObservation {
  const where = `observation ${seen.id}`;
  positive(seen.thicknessMm, `${where}: thicknessMm`, "mm");
  notNegative(seen.thicknessSeMm, `${where}: thicknessSeMm`, "mm");
  within(seen.setpointC, 120, 290, `${where}: setpointC`, "°C");
  within(seen.startC, -40, 40, `${where}: startC`, "°C");
  positive(seen.timeMin, `${where}: timeMin`, "min");
  if (seen.loadFraction !== null) within(seen.loadFraction, 0, 1.2, `${where}: loadFraction`, "");
  if (seen.notCrispMin !== null && seen.crispMin !== null && !(seen.crispMin > seen.notCrispMin))
    fail(`${where}: crispMin`, `must be after the last not-crisp check at ${seen.notCrispMin} min`, seen.crispMin);
  if (seen.coreC !== null) finite(seen.coreC, `${where}: coreC`, "°C");
  if (seen.lossPercent !== null) within(seen.lossPercent, -2, 80, `${where}: lossPercent`, "%");
  for (const score of [...seen.crispScores, ...seen.brownScores]) within(score, 0, 9, `${where}: score`, "");
  return seen;
}
