import type { Trial } from "../trial";
import type { LogName } from "./log-fields";

/** What a trial holds that is possible and unlikely. */
export interface TrialDoubt {
  readonly name: LogName;
  /** the rest of a sentence, the same for all trials of which it is said */
  readonly says: string;
  /** what it was read as, in kitchen units */
  readonly taken: string | null;
}

/** What `trialDoubts` is told beside the trial. */
export interface TrialDoubtsOptions {
  /** today, as `2026-03-14`; days are not held against it unless given */
  readonly today?: string;
}

/** How far back a day may lie before it is asked about (years), and how cold a freezer is at most: our judgement. */
const YEARS_BACK = 10;
const COLDEST_FREEZER_C = -26;
/** Below this a core of pieces that were heated for minutes is asked about (°C): our judgement. */
const WARM_CORE_C = 24.5;

/**
 * What in a trial a person should look at: numbers that a kitchen can have and seldom has, most of them slips of unit,
 * sign or digit. The trial is taken as it is. The limits are our judgement.
 */
export function trialDoubts(trial: Trial, options: TrialDoubtsOptions = {}): readonly TrialDoubt[] {
  const doubts: TrialDoubt[] = [];
  const doubt = (name: LogName, says: string, taken: string | null = null): void => {
    doubts.push({ name, says, taken });
  };
  const celsius = (value: number): string => `${Number(value.toFixed(1))} °C`;
  const { coreC, restedCoreC, setpointC, startC, probesMm, crispMin, timeMin, date } = trial;
  for (const [name, core] of [
    ["coresC", coreC],
    ["restedCoreC", restedCoreC],
  ] as const) {
    if (core === null) continue;
    if (core > setpointC) doubt(name, "is above the air that heats it", celsius(core));
    else if (core > 100) doubt(name, "is above 100 °C, which a core with water in it does not reach", celsius(core));
    if (core === 0) doubt(name, "is 0 °C; was it measured?", celsius(core));
    else if (core < WARM_CORE_C && core > 0 && timeMin >= 8)
      doubt(name, "is cold for pieces heated so long; is the heading's unit right?", celsius(core));
  }
  if (restedCoreC !== null && coreC !== null && restedCoreC < coreC - 25)
    doubt("restedCoreC", "is far below the core at taking out", celsius(restedCoreC));
  if (startC < COLDEST_FREEZER_C)
    doubt("startC", "is colder than most freezers; is the heading's unit right?", celsius(startC));
  if (startC > 12 && startC < 26 && startC !== 20 && startC !== 25)
    doubt("startC", "is warm for pieces from the freezer or fridge; is a minus sign missing?", celsius(startC));
  const [thinnest, thickest] = rangeOf(probesMm);
  if (thinnest < 2) doubt("probesMm", "has a reading under 2 mm", `${short(thinnest)} mm`);
  else if (probesMm.length > 1 && thickest > 1.6 * thinnest && thickest - thinnest > 3)
    doubt("probesMm", "has readings that differ by more than 6 in 10", `${short(thinnest)} to ${short(thickest)} mm`);
  if (thickest > 40) doubt("probesMm", "has a reading over 40 mm", `${short(thickest)} mm`);
  if (timeMin < 1.5) doubt("timeMin", "is under 1 1/2 minutes; is the heading's unit right?", `${short(timeMin)} min`);
  else if (crispMin !== null && crispMin < 1)
    doubt("crispMin", "is crisp after seconds; is the heading's unit right?", `${short(crispMin)} min`);
  if ((trial.loadFraction ?? 0) > 1)
    doubt("loadFraction", "is more than the whole floor", short(trial.loadFraction ?? 0));
  // one panel may agree by chance, or at an end of the scale; in both it seldom does
  const isOne = (scores: readonly number[]): boolean =>
    scores.length >= 3 && scores.every((score) => score === scores[0]);
  const isEnd = ({ crispScores: [crisp], brownScores: [brown] }: Trial): boolean =>
    brown <= 1 && (crisp <= 1 || crisp >= 8.5);
  if (isOne(trial.crispScores) && isOne(trial.brownScores) && !isEnd(trial))
    doubt("crispScores", "is one score from the whole panel, as for browning; did each taste alone?");
  const { massBeforeG, massAfterG, pieces, barePieceG, coatedPieceG } = trial;
  if (massBeforeG !== null && massAfterG !== null && massAfterG < 0.4 * massBeforeG)
    doubt("massAfterG", "is less than 4 tenths of the mass before", `${short(massAfterG)} g`);
  if (massBeforeG !== null && pieces !== null && massBeforeG / pieces < 1)
    doubt("massBeforeG", "makes pieces under 1 g", `${short(massBeforeG / pieces)} g a piece`);
  if (barePieceG !== null && coatedPieceG !== null && coatedPieceG < barePieceG)
    doubt("coatedPieceG", "is less than the bare piece", `${short(coatedPieceG)} g`);
  if (options.today !== undefined) {
    if (date > dayAfter(options.today)) doubt("date", "lies in the future");
    else if (Number(options.today.slice(0, 4)) - Number(date.slice(0, 4)) > YEARS_BACK)
      doubt("date", "lies years back");
  }
  return doubts;
}

/** `12.30` and its like, which may be twelve and a half minutes; the cell as typed. */
export function clockDoubt(cell: string): boolean {
  const places = /^\d{1,3}[.,]([0-5]\d)$/.exec(cell)?.[1];
  return places !== undefined && /^(?:[1-4]0|[0134]5)$/.test(places);
}

function rangeOf(values: readonly number[]): readonly [number, number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return [least, most];
}

function short(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function dayAfter(day: string): string {
  const date = new Date(`${day}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() + 1);
  return date.toISOString().slice(0, 10);
}
