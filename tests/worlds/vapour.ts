/** Water vapour over a moist surface, and what drives it through air that does not move along (Stefan flow). */

/** pressure of the room [Pa] */
export const PRESSURE_PA = 101_325;
const STEP_K = 0.25;
const FROM_C = -45;
const TO_C = 320;
const TABLE = Float64Array.from({ length: Math.round((TO_C - FROM_C) / STEP_K) + 2 }, (_, at) => {
  const celsius = FROM_C + at * STEP_K;
  // Buck 1996, over liquid water
  return 611.21 * Math.exp((18.678 - celsius / 234.5) * (celsius / (257.14 + celsius)));
});
/** from this share of vapour on the drive rises in a straight line: boiling holds the food near 100 °C */
const BOILING_SHARE = 0.96;

/** Saturation pressure [Pa], from a table a quarter of a kelvin apart. */
export function saturationPa(celsius: number): number {
  const place = (Math.min(TO_C, Math.max(FROM_C, celsius)) - FROM_C) / STEP_K;
  const at = Math.floor(place);
  return TABLE[at] + (place - at) * (TABLE[at + 1] - TABLE[at]);
}

/** Its slope [Pa/K]. */
export function saturationSlope(celsius: number): number {
  const at = Math.floor((Math.min(TO_C, Math.max(FROM_C, celsius)) - FROM_C) / STEP_K);
  return (TABLE[at + 1] - TABLE[at]) / STEP_K;
}

/** Drive −P·ln(1 − p/P) [Pa]: close to p in dry air, steep near boiling. */
export function drive(vapourPa: number): number {
  const share = vapourPa / PRESSURE_PA;
  if (share < BOILING_SHARE) return -PRESSURE_PA * Math.log(1 - share);
  return PRESSURE_PA * ((share - BOILING_SHARE) / (1 - BOILING_SHARE) - Math.log(1 - BOILING_SHARE));
}

/** Slope of `drive` [-]. */
export function driveSlope(vapourPa: number): number {
  return 1 / (1 - Math.min(BOILING_SHARE, vapourPa / PRESSURE_PA));
}

/** Heat of evaporation [J/kg]. */
export function evaporationJkg(celsius: number): number {
  return 2.5008e6 - 2360 * celsius;
}

/** Conductance of the air film for vapour [kg/(m²·s·Pa)] beside a convective coefficient, after Lewis: Le^(2/3) of water in air 0.9. */
export function filmConductance(convectiveWm2K: number): number {
  return (0.622 * convectiveWm2K) / (1010 * 0.9 * PRESSURE_PA);
}
