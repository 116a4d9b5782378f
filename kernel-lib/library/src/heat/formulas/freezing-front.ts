import { fail, positive } from "../../check/check";
import { complementaryError, errorFunction } from "./error-function";

/** A thick body at one temperature whose face is held colder than its freezing point. */
export interface FreezingFrontOptions {
  readonly frozenConductivityWmK: number;
  readonly frozenSpecificHeatKJkgK: number;
  readonly thawedConductivityWmK: number;
  readonly thawedSpecificHeatKJkgK: number;
  readonly densityKgM3: number;
  readonly latentKJkg: number;
  /** face [°C] */
  readonly faceC: number;
  readonly freezingPointC: number;
  /** body at the start [°C], at or above the freezing point */
  readonly startC: number;
}

/** Where the front is, and the constants that say where it will be. */
export interface FreezingFront {
  /** λ of front = 2λ√(αs·t) [-] */
  readonly lambda: number;
  /** diffusivity of the frozen part [mm²/s] */
  readonly frozenDiffusivityMm2s: number;
  readonly options: FreezingFrontOptions;
}

/**
 * The front of ice that grows into a thick body from a cold face, after Neumann; with the body at its freezing point it
 * is Stefan's one-phase solution.
 *
 * exp(−λ²)/erf λ − (kl/ks)·√(αs/αl)·(Ti − Tf)/(Tf − Tw)·exp(−ν²λ²)/erfc(νλ) = λ√π·L/[cs(Tf − Tw)], ν = √(αs/αl).
 *
 * @returns λ and the frozen diffusivity; read them with `freezingFrontMm` and `freezingFrontC`
 *
 * Range: a sharp freezing point, equal densities, the face held at one temperature (h → ∞): a bound for a pan on a cold
 * plate.
 *
 * @example
 * const ice = { frozenConductivityWmK: 2.22, frozenSpecificHeatKJkgK: 2.05, thawedConductivityWmK: 0.58, thawedSpecificHeatKJkgK: 4.186, densityKgM3: 1000, latentKJkg: 333.5, faceC: -18, freezingPointC: 0, startC: 20 };
 * freezingFront(ice).lambda; // → 0.19358621
 * freezingFrontMm(freezingFront(ice), 60); // → 24.17437
 *
 * Reference: Carslaw H.S., Jaeger J.C. (1959), Conduction of Heat in Solids, 2nd ed., section 11.2.
 */
export function freezingFront(options: FreezingFrontOptions): FreezingFront {
  const where = "freezingFront";
  const ks = positive(options.frozenConductivityWmK, `${where}: frozenConductivityWmK`, "W/(m·K)");
  const kl = positive(options.thawedConductivityWmK, `${where}: thawedConductivityWmK`, "W/(m·K)");
  const cs = 1000 * positive(options.frozenSpecificHeatKJkgK, `${where}: frozenSpecificHeatKJkgK`, "kJ/(kg·K)");
  const cl = 1000 * positive(options.thawedSpecificHeatKJkgK, `${where}: thawedSpecificHeatKJkgK`, "kJ/(kg·K)");
  const density = positive(options.densityKgM3, `${where}: densityKgM3`, "kg/m³");
  const latent = 1000 * positive(options.latentKJkg, `${where}: latentKJkg`, "kJ/kg");
  const { faceC, freezingPointC, startC } = options;
  if (!(faceC < freezingPointC))
    fail(`${where}: faceC`, `must be below the freezing point of ${freezingPointC} °C`, faceC);
  if (!(startC >= freezingPointC))
    fail(`${where}: startC`, `must be at least the freezing point of ${freezingPointC} °C`, startC);
  const ratio = Math.sqrt((ks * cl) / (kl * cs));
  const cooling = freezingPointC - faceC;
  const balance = (lambda: number): number =>
    Math.exp(-lambda * lambda) / errorFunction(lambda) -
    ((kl / ks) * ratio * (startC - freezingPointC) * Math.exp(-((ratio * lambda) ** 2))) /
      cooling /
      complementaryError(ratio * lambda) -
    (lambda * Math.sqrt(Math.PI) * latent) / (cs * cooling);
  let low = 1e-9;
  let high = 4;
  for (let halving = 0; halving < 100; halving++) {
    const middle = (low + high) / 2;
    const value = balance(middle);
    if (value > 0) low = middle;
    else high = middle;
  }
  return Object.freeze({ lambda: (low + high) / 2, frozenDiffusivityMm2s: (1e6 * ks) / (density * cs), options });
}

/** Depth of the front below the face after a time: 2λ√(αs·t) [mm]. */
export function freezingFrontMm(front: FreezingFront, timeMin: number): number {
  positive(timeMin, "freezingFrontMm: timeMin", "min");
  return 2 * front.lambda * Math.sqrt(front.frozenDiffusivityMm2s * timeMin * 60);
}

/**
 * Temperature at a depth below the face after a time [°C]. Frozen Tw + (Tf − Tw)·erf(x/2√(αs·t))/erf λ; thawed
 * Ti − (Ti − Tf)·erfc(x/2√(αl·t))/erfc(νλ).
 */
export function freezingFrontC(front: FreezingFront, depthMm: number, timeMin: number): number {
  positive(timeMin, "freezingFrontC: timeMin", "min");
  const { faceC, freezingPointC, startC, ...food } = front.options;
  const seconds = 60 * timeMin;
  const eta = depthMm / (2 * Math.sqrt(front.frozenDiffusivityMm2s * seconds));
  if (eta <= front.lambda) return faceC + ((freezingPointC - faceC) * errorFunction(eta)) / errorFunction(front.lambda);
  const thawedMm2s = (1e3 * food.thawedConductivityWmK) / (food.densityKgM3 * food.thawedSpecificHeatKJkgK);
  const ratio = Math.sqrt(front.frozenDiffusivityMm2s / thawedMm2s);
  return (
    startC - ((startC - freezingPointC) * complementaryError(eta * ratio)) / complementaryError(ratio * front.lambda)
  );
}
