/** A state of a notebook that is kept beside it. */
export interface KeptState {
  /** its file's name among the checkpoints */
  readonly name: string;
  /** as the Jupyter Server REST API calls it */
  readonly id: string;
  /** when the notebook stood so, ms since 1970 */
  readonly atMs: number;
  readonly bytes: number;
}

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

/** So far apart are the states that saving keeps by itself; our judgement. */
export const KEPT_EVERY_MS: number = 5 * MINUTE_MS;
/** For how long one an hour is kept, and then one a day; all of the last hour; our judgement. */
const HOURLY_MS = DAY_MS;
const DAILY_MS = 60 * DAY_MS;
const MOST_STATES = 150;
const MOST_BYTES = 500e6;

/** The name of the file that keeps how a notebook stood at a time. */
export function checkpointName(stem: string, atMs: number): string {
  return `${stem}-checkpoint-${new Date(atMs).toISOString().replace(/[-:.]/g, "")}.ipynb`;
}

/** The id of a file that keeps a state of a notebook and when that was; null for any other. */
export function checkpointOf(stem: string, name: string): { readonly id: string; readonly atMs: number } | null {
  const start = `${stem}-checkpoint-`;
  if (!name.startsWith(start) || !name.endsWith(".ipynb")) return null;
  const id = name.slice(start.length, -".ipynb".length);
  const parts = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)(\d{3})Z$/.exec(id);
  if (parts === null) return null;
  const [, year, month, day, hour, minute, second, milli] = parts;
  const atMs = Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}.${milli}Z`);
  return Number.isNaN(atMs) ? null : { id, atMs };
}

/**
 * The states that need be kept no longer: all of the last hour stay, then the newest of each hour for a day, then the newest of
 * each day for sixty; at most 150 and 500 MB in all. The newest two always stay.
 */
export function outdatedStates(states: readonly KeptState[], nowMs: number): readonly KeptState[] {
  const newestFirst = states.toSorted((one, other) => other.atMs - one.atMs);
  const taken = new Set<string>();
  let bytes = 0;
  let kept = 0;
  return newestFirst.filter((state, at) => {
    const age = nowMs - state.atMs;
    const span = age < HOUR_MS ? null : age < HOURLY_MS ? HOUR_MS : DAY_MS;
    const place = span === null ? state.id : `${span} ${Math.floor(state.atMs / span)}`;
    const isLast = at < 2;
    const isDue = !taken.has(place) && age < DAILY_MS && kept < MOST_STATES && bytes + state.bytes <= MOST_BYTES;
    if (!isLast && !isDue) return true;
    taken.add(place);
    bytes += state.bytes;
    kept++;
    return false;
  });
}
