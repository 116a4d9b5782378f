import { within } from "../../check/check";

/** Two grey surfaces: the walls all round, the food small between them. */
export interface RadiationOptions {
  /** [°C] */
  readonly wallC: number;
  /** [°C] */
  readonly surfaceC: number;
  /** of the food [-]; default 0.9 */
  readonly emissivity?: number;
}

/**
 * Radiation written as a surface coefficient, to be added to convection.
 *
 * hr = ε·σ·(Tw² + Ts²)(Tw + Ts), temperatures in K, σ = 5.670374419e-8 W/(m²·K⁴)
 *
 * @returns coefficient [W/(m²·K)]
 *
 * Range: a small piece inside large walls that it sees all of. With neighbours on a tray it sees less.
 *
 * @example
 * radiationCoefficient({ wallC: 204, surfaceC: 100 }); // → 15.9217
 *
 * Reference: Stefan-Boltzmann law; constant from CODATA 2018.
 */
export function radiationCoefficient(options: RadiationOptions): number {
  const wallK = within(options.wallC, -100, 1000, "radiationCoefficient: wallC", "°C") + 273.15;
  const surfaceK = within(options.surfaceC, -100, 1000, "radiationCoefficient: surfaceC", "°C") + 273.15;
  const emissivity = within(options.emissivity ?? 0.9, 0, 1, "radiationCoefficient: emissivity", "");
  return emissivity * 5.670374419e-8 * (wallK ** 2 + surfaceK ** 2) * (wallK + surfaceK);
}
