import { fail, positive, within } from "../../check/check";
import { type AirProperties, airProperties } from "./air-properties";

/** Air that is blown along a flat face. */
export interface FlatPlateOptions {
  /** [m/s] */
  readonly airSpeedMs: number;
  /** length of the face along the air [mm] */
  readonly lengthMm: number;
  /** mean of air and surface [°C]; the properties of air are read there */
  readonly filmC?: number;
  /** properties of the air, instead of those of dry air at filmC */
  readonly air?: AirProperties;
}

/** A convection coefficient from a correlation, with the number that decides its range. */
export interface AirCoefficient {
  /** convection only: add `radiationCoefficient` [W/(m²·K)] */
  readonly coefficientWm2K: number;
  /** Reynolds number for blown air, Rayleigh number for still air [-] */
  readonly flowNumber: number;
  /** as such correlations usually scatter [-] */
  readonly relativeError: number;
  readonly extrapolation: boolean;
}

/**
 * Convection to a flat face in blown air, laminar boundary layer.
 *
 * Nu = 0.664·Re^½·Pr^⅓, Re = u·L/ν, h = Nu·k/L
 *
 * @returns coefficient [W/(m²·K)], Reynolds number
 *
 * Range: Re below 5e5 and above 1e3; smooth face, even stream. Baskets and racks stir the air: measured coefficients
 * run higher, so take this as a start and a metal block or a probe trace as the answer.
 *
 * @example
 * flatPlateCoefficient({ airSpeedMs: 5, lengthMm: 40, air: { kinematicViscosityM2s: 2.84e-5, conductivityWmK: 0.0351, prandtl: 0.69 } }).coefficientWm2K; // → 43.207
 *
 * Reference: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, external flow (Pohlhausen 1921).
 */
export function flatPlateCoefficient(options: FlatPlateOptions): AirCoefficient {
  const where = "flatPlateCoefficient";
  const speed = within(options.airSpeedMs, 0.01, 60, `${where}: airSpeedMs`, "m/s");
  const length = positive(options.lengthMm, `${where}: lengthMm`, "mm") / 1000;
  if (options.air === undefined && options.filmC === undefined)
    fail(`${where}: filmC`, "must be given (or air)", undefined);
  const air = options.air ?? airProperties(within(options.filmC as number, -60, 400, `${where}: filmC`, "°C"));
  const flowNumber = (speed * length) / air.kinematicViscosityM2s;
  const nusselt = 0.664 * Math.sqrt(flowNumber) * Math.cbrt(air.prandtl);
  return Object.freeze({
    coefficientWm2K: (nusselt * air.conductivityWmK) / length,
    flowNumber,
    relativeError: 0.25,
    extrapolation: !(flowNumber > 1e3 && flowNumber < 5e5),
  });
}

/** A flat face in still air. */
export interface NaturalConvectionOptions {
  /** [°C] */
  readonly surfaceC: number;
  /** [°C] */
  readonly airC: number;
  /** area over perimeter of a level face, or height of an upright one [mm] */
  readonly lengthMm: number;
  /** `"level-free"`: warm side up or cold side down; `"level-trapped"`: the air rests on it; `"upright"` */
  readonly face: "level-free" | "level-trapped" | "upright";
}

/**
 * Convection to a flat face in still air.
 *
 * Ra = gβΔT·L³·Pr/ν². Level and free: Nu = 0.54Ra^¼ to 1e7, then 0.15Ra^⅓. Level and trapped: Nu = 0.27Ra^¼. Upright:
 * Nu = 0.68 + 0.670Ra^¼/[1 + (0.492/Pr)^(9/16)]^(4/9).
 *
 * @returns coefficient [W/(m²·K)], Rayleigh number
 *
 * Range: Ra 1e4 to 1e11 level, below 1e9 upright.
 *
 * @example
 * naturalConvectionCoefficient({ surfaceC: 5, airC: -18, lengthMm: 90, face: "level-free" }).coefficientWm2K; // → 5.766
 *
 * Reference: McAdams (1954) for level faces, Churchill & Chu (1975) for upright ones, as in Incropera & DeWitt.
 */
export function naturalConvectionCoefficient(options: NaturalConvectionOptions): AirCoefficient {
  const where = "naturalConvectionCoefficient";
  const { surfaceC, airC, face } = options;
  within(surfaceC, -60, 400, `${where}: surfaceC`, "°C");
  within(airC, -60, 400, `${where}: airC`, "°C");
  if (surfaceC === airC) fail(`${where}: surfaceC`, "must differ from the air", surfaceC);
  const length = positive(options.lengthMm, `${where}: lengthMm`, "mm") / 1000;
  const filmC = (surfaceC + airC) / 2;
  const { kinematicViscosityM2s: viscosity, conductivityWmK, prandtl } = airProperties(filmC);
  const rayleigh = (9.80665 * Math.abs(surfaceC - airC) * length ** 3 * prandtl) / (filmC + 273.15) / viscosity ** 2;
  let nusselt: number;
  let inside = rayleigh >= 1e4 && rayleigh <= 1e11;
  if (face === "level-free") nusselt = rayleigh < 1e7 ? 0.54 * rayleigh ** 0.25 : 0.15 * Math.cbrt(rayleigh);
  else if (face === "level-trapped") nusselt = 0.27 * rayleigh ** 0.25;
  else if (face === "upright") {
    nusselt = 0.68 + (0.67 * rayleigh ** 0.25) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9);
    inside = rayleigh < 1e9;
  } else fail(`${where}: face`, "must be level-free, level-trapped or upright", face as unknown);
  return Object.freeze({
    coefficientWm2K: (nusselt * conductivityWmK) / length,
    flowNumber: rayleigh,
    relativeError: 0.25,
    extrapolation: !inside,
  });
}
