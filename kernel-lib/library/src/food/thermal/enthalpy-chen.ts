import { within } from "../../check/check";

/** What Chen's enthalpy depends on. */
export interface EnthalpyChenOptions {
  /** everything but water, by mass [-] */
  readonly solidsFraction: number;
  /** water that freezes, by mass [-] */
  readonly freezableWaterFraction: number;
  /** initial freezing point [°C] */
  readonly freezingPointC: number;
  /** [°C], −40 to 100 */
  readonly temperatureC: number;
}

/**
 * Enthalpy of a food after Chen (1985), above −40 °C: an independent check on `enthalpyAt`.
 *
 * Frozen h = (T + 40)[1.55 + 1.26xs − (xw − xb)·333.6·Tf/(−40·T)]; thawed h = h(Tf) + (T − Tf)(4.19 − 2.30xs − 0.628xs³).
 *
 * @returns enthalpy [kJ/kg], zero at −40 °C
 *
 * Range: −40 to 100 °C (forms from memory of the chapter below).
 *
 * @example
 * enthalpyChen({ solidsFraction: 0.42, freezableWaterFraction: 0.51008, freezingPointC: -1.7, temperatureC: 10 }); // → 279.741
 *
 * Reference: Chen C.S. (1985), Journal of Food Science 50:1163-1166; ASHRAE Handbook - Refrigeration (2006), chapter 9.
 */
export function enthalpyChen(options: EnthalpyChenOptions): number {
  const { solidsFraction, freezableWaterFraction, freezingPointC, temperatureC } = options;
  within(solidsFraction, 0, 1, "enthalpyChen: solidsFraction", "");
  within(freezableWaterFraction, 0, 1 - solidsFraction, "enthalpyChen: freezableWaterFraction", "(the water)");
  within(freezingPointC, -20, -0.01, "enthalpyChen: freezingPointC", "°C");
  within(temperatureC, -40, 100, "enthalpyChen: temperatureC", "°C");
  const frozen = (t: number): number =>
    (t + 40) * (1.55 + 1.26 * solidsFraction - (freezableWaterFraction * 333.6 * freezingPointC) / (-40 * t));
  if (temperatureC <= freezingPointC) return frozen(temperatureC);
  return (
    frozen(freezingPointC) +
    (temperatureC - freezingPointC) * (4.19 - 2.3 * solidsFraction - 0.628 * solidsFraction ** 3)
  );
}
