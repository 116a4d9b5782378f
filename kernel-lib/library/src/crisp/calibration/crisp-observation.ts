import { fail, finite, notNegative, positive, within } from "../../check/check";

/** What one logged trial says to the three clocks; what was not measured is `null`. */
export interface CrispObservation {
  /** name of the trial */
  readonly id: string;
  /** the morning: trials of one session share what was particular to it */
  readonly session: string;
  /** the slab that the pieces were cut from: its trials share the error of its thickness; `null` when on its own */
  readonly slab: string | null;
  readonly applianceId: string;
  readonly thicknessMm: number;
  /** standard error of that thickness (mm); 0 when it counts as known */
  readonly thicknessSeMm: number;
  /** lateral sides of a piece (mm), the diameter twice for a round one; `null` counts as an uncut slab */
  readonly sidesMm: readonly [number, number] | null;
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
  /** when the appliance was opened to look (min); empty when it was not, or when nobody knows */
  readonly looksMin: readonly number[];
  /** core at taking out (°C) */
  readonly coreC: number | null;
  /** highest core within some minutes of taking out (°C) */
  readonly restedCoreC: number | null;
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
  for (const side of seen.sidesMm ?? []) positive(side, `${where}: sidesMm`, "mm");
  within(seen.setpointC, 120, 290, `${where}: setpointC`, "°C");
  within(seen.startC, -40, 40, `${where}: startC`, "°C");
  positive(seen.timeMin, `${where}: timeMin`, "min");
  if (seen.loadFraction !== null) within(seen.loadFraction, 0, 1.2, `${where}: loadFraction`, "");
  if (seen.notCrispMin !== null && seen.crispMin !== null && !(seen.crispMin > seen.notCrispMin))
    fail(`${where}: crispMin`, `must be after the last not-crisp check at ${seen.notCrispMin} min`, seen.crispMin);
  for (const look of seen.looksMin) notNegative(look, `${where}: looksMin`, "min");
  for (const core of [seen.coreC, seen.restedCoreC]) if (core !== null) finite(core, `${where}: coreC`, "°C");
  if (seen.lossPercent !== null) within(seen.lossPercent, -2, 80, `${where}: lossPercent`, "%");
  for (const score of [...seen.crispScores, ...seen.brownScores]) within(score, 0, 9, `${where}: score`, "");
  return seen;
}
