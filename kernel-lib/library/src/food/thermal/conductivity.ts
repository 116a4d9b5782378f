import { fail, within } from "../../check/check";
import { type Composition, checkComposition } from "../composition/composition";
import { choiOkos, type FoodComponent } from "./choi-okos";
import { conductivityLevy, conductivityMaxwellEucken } from "./conductivity-two-phase";
import { componentMasses } from "./mix-density";

/** How the components of a mix are taken to lie with respect to the flow of heat. */
export type ConductivityModel = "levy" | "parallel" | "series" | "geometric" | "maxwell-eucken";

/** What else the conductivity of a mix depends on. */
export interface MixConductivityOptions {
  /** temperature [°C], −40 to 150; default 20 */
  readonly temperatureC?: number;
  /** air by volume of the mix [-], 0 to below 1; default 0 */
  readonly airFraction?: number;
  /** mass of ice by mass of mix [-], at most the water fraction; default 0 */
  readonly iceFraction?: number;
  /** default `"levy"`; `"parallel"` and `"series"` are the upper and lower bounds */
  readonly model?: ConductivityModel;
}

const STILL_AIR_WMK = 0.026;

/** Solids first, then the water around them, then the ice in both: the order of the step-by-step models. */
const ORDER: readonly FoodComponent[] = ["ash", "fibre", "carbohydrate", "protein", "fat", "water", "ice"];

/**
 * Thermal conductivity of a mix from its composition.
 *
 * Volume fractions vᵢ = (xᵢ/ρᵢ)/Σ(xⱼ/ρⱼ); parallel Σ vᵢkᵢ, series 1/Σ(vᵢ/kᵢ), geometric Π kᵢ^vᵢ; Levy's and
 * Maxwell-Eucken's two-phase forms are applied one component after another (solids, water, ice). Air comes last, as
 * bubbles dispersed in the mix (Maxwell-Eucken, 0.026 W/(m·K)).
 *
 * @param composition mass fractions [-]
 * @param options temperatureC [°C], airFraction [-], iceFraction [-], model
 * @returns conductivity [W/(m·K)]
 *
 * Range: −40 to 150 °C. The default, Levy's form, came out best against measured foods in Fricke & Becker (2001); a
 * chopped and formed mix has no direction, so it lies between the parallel and the series bound.
 *
 * @example
 * const formed = { waterFraction: 0.62, proteinFraction: 0.17, fatFraction: 0.09, carbohydrateFraction: 0.095, fibreFraction: 0.007, ashFraction: 0.018 };
 * mixConductivity(formed, { model: "parallel" }); // → 0.473244
 * mixConductivity(formed, { model: "series" }); // → 0.36305
 * mixConductivity(formed); // → 0.437391
 *
 * Reference: ASHRAE Handbook - Refrigeration (2006), chapter 9; Fricke B.A., Becker B.R. (2001), HVAC&R Research 7(4).
 */
export function mixConductivity(composition: Composition, options: MixConductivityOptions = {}): number {
  const { temperatureC = 20, airFraction = 0, iceFraction = 0, model = "levy" } = options;
  checkComposition(composition, "mixConductivity");
  within(temperatureC, -40, 150, "mixConductivity: temperatureC", "°C");
  if (!(airFraction >= 0 && airFraction < 1)) fail("mixConductivity: airFraction", "must be >= 0 and < 1", airFraction);
  within(iceFraction, 0, composition.waterFraction, "mixConductivity: iceFraction", "(the water fraction)");
  const parts = componentMasses(composition, iceFraction)
    .map(([component, mass]) => {
      const { densityKgM3, conductivityWmK } = choiOkos(component, temperatureC);
      return { component, volume: mass / densityKgM3, conductivityWmK };
    })
    .sort((one, other) => ORDER.indexOf(one.component) - ORDER.indexOf(other.component));
  const solid = mixed(parts, model);
  if (airFraction === 0) return solid;
  return conductivityMaxwellEucken({
    continuousWmK: solid,
    dispersedWmK: STILL_AIR_WMK,
    dispersedVolumeFraction: airFraction,
  });
}

interface Part {
  readonly component: FoodComponent;
  readonly volume: number;
  readonly conductivityWmK: number;
}

function mixed(parts: readonly Part[], model: ConductivityModel): number {
  const total = parts.reduce((sum, part) => sum + part.volume, 0);
  const sumOf = (term: (part: Part) => number): number =>
    parts.reduce((sum, part) => sum + (part.volume / total) * term(part), 0);
  switch (model) {
    case "parallel":
      return sumOf((part) => part.conductivityWmK);
    case "series":
      return 1 / sumOf((part) => 1 / part.conductivityWmK);
    case "geometric":
      return Math.exp(sumOf((part) => Math.log(part.conductivityWmK)));
    case "levy":
      return stepByStep(parts, conductivityLevy);
    case "maxwell-eucken": {
      const water = parts.filter((part) => part.component === "water");
      return stepByStep([...water, ...parts.filter((part) => part.component !== "water")], conductivityMaxwellEucken);
    }
    default:
      return fail(
        "mixConductivity: model",
        "must be one of levy, parallel, series, geometric, maxwell-eucken",
        model as unknown,
      );
  }
}

function stepByStep(parts: readonly Part[], twoPhases: typeof conductivityLevy): number {
  let { volume, conductivityWmK } = parts[0];
  for (const part of parts.slice(1)) {
    volume += part.volume;
    conductivityWmK = twoPhases({
      continuousWmK: conductivityWmK,
      dispersedWmK: part.conductivityWmK,
      dispersedVolumeFraction: part.volume / volume,
    });
  }
  return conductivityWmK;
}
