import type { HeatRun } from "../solver/heat-run";

/** One time with the range that the coefficient's doubt gives it. */
export interface TimeRange {
  /** [min] */
  readonly timeMin: number;
  /** with the coefficient at its high end [min] */
  readonly earliestMin: number;
  /** with the coefficient at its low end [min] */
  readonly latestMin: number;
}

/** Runs as given, with more and with less heat transfer, and reads a time off all three. */
export function runsOverDoubt(
  relativeError: number,
  simulate: (factor: number) => HeatRun,
): { readonly runs: readonly HeatRun[]; readonly range: (read: (run: HeatRun) => number) => TimeRange } {
  const runs = [simulate(1), simulate(1 + relativeError), simulate(1 - relativeError)];
  return {
    runs,
    range: (read) => {
      const [timeMin, earliestMin, latestMin] = runs.map(read);
      return { timeMin, earliestMin, latestMin };
    },
  };
}
