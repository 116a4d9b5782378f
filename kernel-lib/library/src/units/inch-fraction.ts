import { notNegative } from "../check/check";

/**
 * A length as the nearest sixteenth of an inch, the way a ruler in the kitchen shows it.
 *
 * @param lengthMm length [mm], zero or above
 * @returns text such as `"5/16 in"`, `"1 1/4 in"`, `"0 in"`
 * @example
 * inchFraction(8); // → "5/16 in"
 * inchFraction(31.75); // → "1 1/4 in"
 */
export function inchFraction(lengthMm: number): string {
  notNegative(lengthMm, "inchFraction: lengthMm", "mm");
  const sixteenths = Math.round((lengthMm / 25.4) * 16);
  const whole = Math.floor(sixteenths / 16);
  let top = sixteenths % 16;
  let bottom = 16;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const parts = [whole > 0 || top === 0 ? String(whole) : "", top > 0 ? `${top}/${bottom}` : ""];
  return `${parts.filter(Boolean).join(" ")} in`;
}
