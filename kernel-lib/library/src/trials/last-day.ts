import type { Kitchen } from "./kitchen";

const DAY_MS = 86_400_000;

/** The last day that a kitchen's files name, of trials, prices and packs, `2026-03-14`; null where they name none. */
export function lastDay({ packs = [], pantry = [], trials }: Kitchen): string | null {
  const days = [
    ...trials.map(({ date }) => date),
    ...pantry.flatMap(({ pricedOn }) => pricedOn ?? []),
    ...packs.map(({ packedOn }) => packedOn),
  ];
  return days.reduce<string | null>((last, day) => (last === null || day > last ? day : last), null);
}

/** The day so many days after another, both as `2026-03-14`. */
export function dayAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

/** Days from one day to another, both as `2026-03-14`; below 0 when it is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS);
}
