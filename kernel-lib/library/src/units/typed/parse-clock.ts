import { fail } from "../../check/check";

/**
 * Minutes after midnight of a time of day: `"8:00"`, `"13:10"`, `"1:10 pm"`, `"2 pm"`; `"24:00"` is the end of the day.
 *
 * @example
 * parseClock("13:10", "opens"); // → 790
 * parseClock("1:10 pm", "opens"); // → 790
 */
export function parseClock(text: string, where: string): number {
  return clockMin(text) ?? fail(where, 'must be a time of day, such as "8:00", "13:10" or "1:10 pm"', text);
}

/** As `parseClock`; null where the text is no time of day. */
export function clockMin(text: string): number | null {
  const parts = /^(\d{1,2})(?:[:.](\d{2})(?: ?([ap])\.?m\.?)?| ?([ap])\.?m\.?)$/i.exec(
    String(text).trim().slice(0, 20),
  );
  const [hour, minute] = parts === null ? [Number.NaN, Number.NaN] : [Number(parts[1]), Number(parts[2] ?? 0)];
  const half = (parts?.[3] ?? parts?.[4])?.toLowerCase();
  const sound =
    minute < 60 && (half === undefined ? hour < 24 || (hour === 24 && minute === 0) : hour >= 1 && hour <= 12);
  return sound ? (half === undefined ? hour : (hour % 12) + (half === "p" ? 12 : 0)) * 60 + minute : null;
}
