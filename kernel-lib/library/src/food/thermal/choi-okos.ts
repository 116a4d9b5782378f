import { fail, within } from "../../check/check";
import { ownValue } from "../../check/own-value";

/** A component of food with its own thermal properties. Ice is frozen water; air is not one of them. */
export type FoodComponent = "water" | "ice" | "protein" | "fat" | "carbohydrate" | "fibre" | "ash";

/** Thermal properties of one component, or of a mix, at one temperature. */
export interface ComponentProperties {
  /** thermal conductivity k [W/(m·K)] */
  readonly conductivityWmK: number;
  /** density ρ without voids [kg/m³], the same number in g/L */
  readonly densityKgM3: number;
  /** specific heat cp [kJ/(kg·K)], the same number in J/(g·K) */
  readonly specificHeatKJkgK: number;
}

type Quadratic = readonly [number, number, number];

interface Coefficients {
  readonly conductivity: Quadratic;
  readonly density: Quadratic;
  readonly specificHeat: Quadratic;
}

const COEFFICIENTS: Readonly<Record<FoodComponent, Coefficients>> = {
  water: {
    conductivity: [0.57109, 1.7625e-3, -6.7036e-6],
    density: [997.18, 3.1439e-3, -3.7574e-3],
    specificHeat: [4.1762, -9.0864e-5, 5.4731e-6],
  },
  ice: {
    conductivity: [2.2196, -6.2489e-3, 1.0154e-4],
    density: [916.89, -0.13071, 0],
    specificHeat: [2.0623, 6.0769e-3, 0],
  },
  protein: {
    conductivity: [0.17881, 1.1958e-3, -2.7178e-6],
    density: [1329.9, -0.5184, 0],
    specificHeat: [2.0082, 1.2089e-3, -1.3129e-6],
  },
  fat: {
    conductivity: [0.18071, -2.7604e-4, -1.7749e-7],
    density: [925.59, -0.41757, 0],
    specificHeat: [1.9842, 1.4733e-3, -4.8008e-6],
  },
  carbohydrate: {
    conductivity: [0.20141, 1.3874e-3, -4.3312e-6],
    density: [1599.1, -0.31046, 0],
    specificHeat: [1.5488, 1.9625e-3, -5.9399e-6],
  },
  fibre: {
    conductivity: [0.18331, 1.2497e-3, -3.1683e-6],
    density: [1311.5, -0.36589, 0],
    specificHeat: [1.8459, 1.8306e-3, -4.6509e-6],
  },
  ash: {
    conductivity: [0.32962, 1.4011e-3, -2.9069e-6],
    density: [2423.8, -0.28063, 0],
    specificHeat: [1.0926, 1.8896e-3, -3.6817e-6],
  },
};

const at = ([c0, c1, c2]: Quadratic, temperatureC: number): number => c0 + c1 * temperatureC + c2 * temperatureC ** 2;

/**
 * Conductivity, density and specific heat of one food component, after Choi & Okos (1986).
 *
 * Each property is c0 + c1·T + c2·T², T in °C.
 *
 * @param component water, ice, protein, fat, carbohydrate, fibre or ash
 * @param temperatureC temperature [°C], −40 to 150; ice: −40 to 0
 * @returns conductivity [W/(m·K)], density [kg/m³], specific heat [kJ/(kg·K)]
 *
 * Range: −40 to 150 °C. The specific heat of water takes 4.1762 kJ/(kg·K) as its intercept; the 4.1289 that some
 * printings carry is 1.3 % low at 20 °C. Below 0 °C water means water that is not frozen, on the same curve carried on;
 * the handbook's separate branch for its specific heat there is left out, as it jumps by 2 % at 0 °C.
 *
 * @example
 * choiOkos("protein", 20).conductivityWmK; // → 0.20163888
 * choiOkos("ice", -18).densityKgM3; // → 919.24278
 * choiOkos("ice", 20); // throws "must be between -40 and 0 °C for ice"
 *
 * Reference: Choi Y., Okos M.R. (1986), "Effects of temperature and composition on the thermal properties of foods",
 * in Food Engineering and Process Applications 1:93-101; as in ASHRAE Handbook - Refrigeration (2006), chapter 9,
 * tables 1 and 2.
 */
export function choiOkos(component: FoodComponent, temperatureC: number): ComponentProperties {
  const row = ownValue(COEFFICIENTS, component);
  if (!row) fail("choiOkos: component", `must be one of ${Object.keys(COEFFICIENTS).join(", ")}`, component);
  const hottest = component === "ice" ? 0 : 150;
  within(temperatureC, -40, hottest, "choiOkos: temperatureC", component === "ice" ? "°C for ice" : "°C");
  return Object.freeze({
    conductivityWmK: at(row.conductivity, temperatureC),
    densityKgM3: at(row.density, temperatureC),
    specificHeatKJkgK: at(row.specificHeat, temperatureC),
  });
}
