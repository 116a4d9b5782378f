import { positive, within } from "../../check/check";

/** Two phases side by side in one material, by volume. */
export interface TwoPhases {
  /** conductivity of the phase that surrounds the other [W/(m·K)] */
  readonly continuousWmK: number;
  /** conductivity of the phase that is dispersed in it [W/(m·K)] */
  readonly dispersedWmK: number;
  /** volume of the dispersed phase by volume of the whole [-], 0 to 1 */
  readonly dispersedVolumeFraction: number;
}

function checked(phases: TwoPhases, where: string): TwoPhases {
  positive(phases.continuousWmK, `${where}: continuousWmK`, "W/(m·K)");
  positive(phases.dispersedWmK, `${where}: dispersedWmK`, "W/(m·K)");
  within(phases.dispersedVolumeFraction, 0, 1, `${where}: dispersedVolumeFraction`, "");
  return phases;
}

/**
 * Conductivity of a continuous phase with another dispersed in it, after Maxwell and Eucken.
 *
 * k = kc · [2kc + kd − 2v(kc − kd)] / [2kc + kd + v(kc − kd)]
 *
 * @returns conductivity [W/(m·K)]
 *
 * Range: dilute to moderate dispersions; used here for air bubbles in a mix.
 *
 * @example
 * conductivityMaxwellEucken({ continuousWmK: 0.49, dispersedWmK: 0.026, dispersedVolumeFraction: 0.1 }); // → 0.425188
 *
 * Reference: Eucken A. (1940), Forschung auf dem Gebiete des Ingenieurwesens 11:6; as in ASHRAE Handbook -
 * Refrigeration (2006), chapter 9.
 */
export function conductivityMaxwellEucken(phases: TwoPhases): number {
  const { continuousWmK, dispersedWmK, dispersedVolumeFraction } = checked(phases, "conductivityMaxwellEucken");
  const both = 2 * continuousWmK + dispersedWmK;
  const gap = dispersedVolumeFraction * (continuousWmK - dispersedWmK);
  return (continuousWmK * (both - 2 * gap)) / (both + gap);
}

/**
 * Conductivity of two phases after Levy (1981): Maxwell and Eucken's form made indifferent to which phase is called
 * dispersed.
 *
 * Λ = k1/k2; σ = (Λ − 1)²/[(Λ + 1)² + Λ/2]; F = ½{b − [b² − 8R1/σ]^½}, b = 2/σ − 1 + 2R1;
 * k = k2·[(2 + Λ) + 2(Λ − 1)F]/[(2 + Λ) − (Λ − 1)F], phase 1 the dispersed one, R1 its volume fraction.
 *
 * @returns conductivity [W/(m·K)]
 *
 * Range: any volume fraction; it came out best of the forms compared with measured foods by Fricke & Becker (2001).
 *
 * @example
 * conductivityLevy({ continuousWmK: 0.4, dispersedWmK: 2.36, dispersedVolumeFraction: 0.55 }); // → 1.16768
 *
 * Reference: Levy F.L. (1981), International Journal of Refrigeration 4:223 (form from memory, limits checked);
 * Fricke B.A., Becker B.R. (2001), HVAC&R Research 7(4).
 */
export function conductivityLevy(phases: TwoPhases): number {
  const { continuousWmK, dispersedWmK, dispersedVolumeFraction } = checked(phases, "conductivityLevy");
  const ratio = dispersedWmK / continuousWmK;
  if (Math.abs(ratio - 1) < 1e-9) return continuousWmK;
  const sigma = (ratio - 1) ** 2 / ((ratio + 1) ** 2 + ratio / 2);
  const b = 2 / sigma - 1 + 2 * dispersedVolumeFraction;
  const effective = 0.5 * (b - Math.sqrt(Math.max(0, b * b - (8 * dispersedVolumeFraction) / sigma)));
  return (continuousWmK * (2 + ratio + 2 * (ratio - 1) * effective)) / (2 + ratio - (ratio - 1) * effective);
}
