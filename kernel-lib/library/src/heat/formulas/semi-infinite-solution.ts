import { notNegative, positive } from "../../check/check";
import { complementaryError } from "./error-function";

/** A thick body of constant properties whose face meets air of another temperature. */
export interface SemiInfiniteOptions {
  /** below the face [mm] */
  readonly depthMm: number;
  readonly timeMin: number;
  readonly coefficientWm2K: number;
  readonly conductivityWmK: number;
  /** α = k/(ρ·cp) [mm²/s]; foods lie near 0.13 */
  readonly diffusivityMm2s: number;
}

/**
 * How far a point below the face of a thick body has gone towards the air: (T − T0)/(Ta − T0).
 *
 * Θ' = erfc(η) − exp(hx/k + h²αt/k²)·erfc(η + h√(αt)/k), η = x/(2√(αt))
 *
 * @returns 0 untouched, 1 at the air's temperature [-]
 *
 * Range: until the far side feels the air, α·t/L² below about 0.05; no freezing, no drying.
 *
 * @example
 * semiInfiniteSolution({ depthMm: 5, timeMin: 1, coefficientWm2K: 25, conductivityWmK: 0.45, diffusivityMm2s: 0.13 }); // → 0.019657069
 *
 * Reference: Carslaw H.S., Jaeger J.C. (1959), Conduction of Heat in Solids, 2nd ed., section 2.7.
 */
export function semiInfiniteSolution(options: SemiInfiniteOptions): number {
  const where = "semiInfiniteSolution";
  const x = notNegative(options.depthMm, `${where}: depthMm`, "mm") / 1000;
  const seconds = 60 * positive(options.timeMin, `${where}: timeMin`, "min");
  const h = positive(options.coefficientWm2K, `${where}: coefficientWm2K`, "W/(m²·K)");
  const k = positive(options.conductivityWmK, `${where}: conductivityWmK`, "W/(m·K)");
  const reach = Math.sqrt(positive(options.diffusivityMm2s, `${where}: diffusivityMm2s`, "mm²/s") * 1e-6 * seconds);
  const eta = x / (2 * reach);
  const surface = (h * reach) / k;
  const sum = eta + surface;
  // exp(hx/k + surface²)·erfc(sum) = exp(−eta²)·exp(sum²)·erfc(sum), which does not overflow
  const film = sum < 5 ? Math.exp(sum * sum) * complementaryError(sum) : scaledFar(sum);
  return complementaryError(eta) - Math.exp(-eta * eta) * film;
}

/** exp(x²)·erfc(x) for large x: its continued fraction. */
function scaledFar(x: number): number {
  let level = x;
  for (let step = 40; step >= 1; step--) level = x + step / 2 / level;
  return 1 / (Math.sqrt(Math.PI) * level);
}
