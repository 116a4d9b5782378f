import { fail, notNegative } from "../check/check";

/**
 * A length as a ruler in the kitchen shows it: the nearest sixteenth of an inch, or another part.
 *
 * @param lengthMm length [mm], zero or above
 * @param finest parts of an inch to round to: 32 for a depth, 16 for anything longer [-]
 * @returns text such as `"5/16 in"`, `"1 1/4 in"`, `"0 in"`
 * @example
 * inchFraction(8); // → "5/16 in"
 * inchFraction(31.75); // → "1 1/4 in"
 * inchFraction(8.7, 32); // → "11/32 in"
 */
export function inchFraction(lengthMm: number, finest: 16 | 32 = 16): string {
  notNegative(lengthMm, "inchFraction: lengthMm", "mm");
  if (finest !== 16 && finest !== 32) fail("inchFraction: finest", "must be 16 or 32", finest);
  const parts = Math.round((lengthMm / 25.4) * finest);
  const whole = Math.floor(parts / finest);
  let top = parts % finest;
  let bottom: number = finest;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const words = [whole > 0 || top === 0 ? String(whole) : "", top > 0 ? `${top}/${bottom}` : ""];
  return `${words.filter(Boolean).join(" ")} in`;
}
