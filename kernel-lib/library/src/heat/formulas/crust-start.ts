import { fail, positive, within } from "../../check/check";
import { enthalpyAt } from "../../food/thermal/enthalpy";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";

/** A slab heated from both faces, until its crust starts. */
export interface CrustStartOptions {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  /** heat transfer coefficient at both faces [W/(m²·K)] */
  readonly coefficientWm2K: number;
  /** air of the appliance [°C] */
  readonly airC: number;
  /** food at the start [°C]; default −18 */
  readonly startC?: number;
  /** temperature of the evaporating front [°C]; default 100 */
  readonly evaporationC?: number;
}

/** When the crust of a slab starts to grow. */
export interface CrustStart {
  /** the surface reaches the evaporating temperature [min] */
  readonly surfaceMin: number;
  /** what the core still soaks up after that, as a delay of the crust [min] */
  readonly soakMin: number;
  /** surfaceMin + soakMin: where the clock of `crustDepthMm` starts [min] */
  readonly startMin: number;
  /** worst error of surfaceMin against the solver inside the range that was checked [-] */
  readonly worstRelativeError: number;
  /** true outside the range that was checked */
  readonly extrapolation: boolean;
}

/**
 * When the crust of a slab starts to grow: the surface reaches the evaporating temperature, and the core then still
 * soaks up heat that would have dried the surface.
 *
 * soak = ℓ²/3α, ℓ half the thickness, α of the thawed food; t0 = [ΔH·ℓ/h − (Ta − Tev)·ℓ²/3α]/(Ta − Tm),
 * ΔH = ρ[h(Tev) − h(start)]; Tm = Tev − (Tev − Tm0)/(1 + 0.55·Bi), Bi = hℓ/k, Tm0 the mean surface temperature of a
 * slab that is warm all through alike: ∫dh/(Ta − T) = Δh/(Ta − Tm0).
 *
 * @returns times [min]
 *
 * Range: 0.55 was fitted to 15 solver runs of one food (180 and 204 °C, 30 and 60 W/(m²·K), 6 to 19 mm, from −18 °C:
 * worst error 1.2 %) and checked on 28 foods of 45 to 85 % water, 170 to 210 °C, Bi 0.15 to 1.1, from −15 °C or colder:
 * worst error 2.6 %, rms 0.9 %. Both faces alike, edges left out, no drying below Tev: a coating that dries at wet-bulb
 * starts earlier.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * crustStart({ food, thicknessMm: 6.35, coefficientWm2K: 40, airC: 204 }).soakMin; // → 0.420026
 *
 * Reference: this library's slab solver.
 */
export function crustStart(options: CrustStartOptions): CrustStart {
  const { food, airC, startC = -18, evaporationC = 100 } = options;
  checkThermalModel(food, "crustStart: food");
  const half = positive(options.thicknessMm, "crustStart: thicknessMm", "mm") / 2000;
  const h = positive(options.coefficientWm2K, "crustStart: coefficientWm2K", "W/(m²·K)");
  within(evaporationC, 20, 130, "crustStart: evaporationC", "°C");
  within(startC, -40, evaporationC, "crustStart: startC", "°C");
  if (!(airC > evaporationC))
    fail("crustStart: airC", `must be above the evaporating front at ${evaporationC} °C`, airC);
  const conductivity = food.thawedConductivityWmK;
  const soakS = (half * half * food.densityKgM3 * food.thawedSpecificHeatKJkgK * 1000) / (3 * conductivity);
  const heatJkg = 1000 * (enthalpyAt(food, evaporationC) - enthalpyAt(food, startC));
  const uniformMeanC = airC - heatJkg / heatOverDriving(food, startC, evaporationC, airC);
  const biot = (h * half) / conductivity;
  const meanSurfaceC = evaporationC - (evaporationC - uniformMeanC) / (1 + 0.55 * biot);
  const surfaceS = ((food.densityKgM3 * heatJkg * half) / h - (airC - evaporationC) * soakS) / (airC - meanSurfaceC);
  const inside = airC >= 170 && airC <= 210 && biot >= 0.15 && biot <= 1.1 && startC <= -15 && evaporationC === 100;
  return Object.freeze({
    surfaceMin: Math.max(0, surfaceS) / 60,
    soakMin: soakS / 60,
    startMin: (Math.max(0, surfaceS) + soakS) / 60,
    worstRelativeError: 0.03,
    extrapolation: !inside,
  });
}

/** ∫ dh/(Ta − T) from start to end [J/(kg·K)], by the midpoint rule over temperature. */
function heatOverDriving(food: ThermalModel, startC: number, endC: number, airC: number): number {
  const slices = 500;
  const stepK = (endC - startC) / slices;
  let sum = 0;
  for (let slice = 0; slice < slices; slice++) {
    const lowC = startC + slice * stepK;
    const heat = 1000 * (enthalpyAt(food, lowC + stepK) - enthalpyAt(food, lowC));
    sum += heat / (airC - (lowC + stepK / 2));
  }
  return sum;
}
