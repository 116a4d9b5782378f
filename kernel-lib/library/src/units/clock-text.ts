import type { KitchenUnits } from "./unit-table";

const DAY_MIN = 1440;

/**
 * A time of day as a clock shows it, from minutes after midnight; what lies beyond a day says which.
 *
 * @example
 * clockText(790, "metric"); // → "13:10"
 * clockText(790, "us"); // → "1:10 pm"
 * clockText(1440 + 485, "metric"); // → "8:05 on day 2"
 */
export function clockText(minutes: number, units: KitchenUnits): string {
  const whole = Math.round(minutes);
  const day = Math.floor(whole / DAY_MIN);
  const [hour, minute] = [Math.floor((whole - day * DAY_MIN) / 60), (whole - day * DAY_MIN) % 60];
  const two = String(minute).padStart(2, "0");
  const time =
    units === "us" ? `${hour % 12 === 0 ? 12 : hour % 12}:${two} ${hour < 12 ? "am" : "pm"}` : `${hour}:${two}`;
  return day === 0 ? time : `${time} on day ${day + 1}`;
}
