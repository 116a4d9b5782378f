/** Dry air at one temperature and 101 325 Pa. */
export interface AirProperties {
  /** ν [m²/s] */
  readonly kinematicViscosityM2s: number;
  /** k [W/(m·K)] */
  readonly conductivityWmK: number;
  /** Pr [-] */
  readonly prandtl: number;
}

/**
 * Dry air at sea level: Sutherland's law for the viscosity and the conductivity of the US Standard Atmosphere (1976,
 * constants from memory), ideal gas. Within 2 % of the usual tables
 * from −40 to 250 °C.
 */
export function airProperties(temperatureC: number): AirProperties {
  const kelvin = temperatureC + 273.15;
  const viscosity = (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
  const conductivityWmK = (2.648151e-3 * kelvin ** 1.5) / (kelvin + 245.4 * 10 ** (-12 / kelvin));
  const density = 101325 / (287.05 * kelvin);
  return {
    kinematicViscosityM2s: viscosity / density,
    conductivityWmK,
    prandtl: (viscosity * 1007) / conductivityWmK,
  };
}
