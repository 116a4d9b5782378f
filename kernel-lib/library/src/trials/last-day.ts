import type { Kitchen } from "./kitchen";

/** The last day that a kitchen's files name, of trials, prices and packs, `2026-03-14`; null where they name none. */
export function lastDay({ packs = [], pantry = [], trials }: Kitchen): string | null {
  const days = [
    ...trials.map(({ date }) => date),
    ...pantry.flatMap(({ pricedOn }) => pricedOn ?? []),
    ...packs.map(({ packedOn }) => packedOn),
  ];
  return days.reduce<string | null>((last, day) => (last === null || day > last ? day : last), null);
}

/** Days from one day to another, both as `2026-03-14`; below 0 when it is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}
