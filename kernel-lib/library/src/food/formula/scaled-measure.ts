import { parseAmount } from "../../units/typed/parse-amount";

/**
 * A household measure times a factor, to the nearest eighth (from 10 on, to the nearest half): `"1 1/2 tsp"` × 2 is
 * `"3 tsp"`. An amount that rounds to nothing reads `"under 1/8 tsp"`: weigh it.
 *
 * @param amount a number and a measure
 * @param factor above 0
 */
export function scaledMeasure(amount: string, factor: number): string {
  const parts = parseAmount(amount, "scaledMeasure: amount");
  const value = parts.amount * factor;
  const step = value >= 10 ? 2 : 8;
  let top = Math.round(value * step);
  if (top === 0) return `under 1/8 ${parts.rest}`;
  const whole = Math.floor(top / step);
  let bottom = step;
  top %= step;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const number = [whole > 0 ? String(whole) : "", top > 0 ? `${top}/${bottom}` : ""].filter(Boolean).join(" ");
  return `${number} ${parts.rest}`;
}
