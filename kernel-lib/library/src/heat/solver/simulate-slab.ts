import { fail, positive, within } from "../../check/check";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";
import { faceAir } from "../box/face-air";
import { solveBox } from "../box/solve-box";
import type { DryingLaw } from "../box/surface-balance";
import { type HeatRun, heatRunOf } from "./heat-run";
import { type Drying, dryingConstants, flipsS, type Surroundings } from "./surroundings";

/** A slab of food and what it is put into. */
export interface SimulateSlabOptions extends Surroundings {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  /** food at the start, even all through [°C] */
  readonly startC: number;
  /** how long to run [min] */
  readonly endMin: number;
  /** stop as soon as the core has passed this [°C] */
  readonly stopCoreC?: number;
  /** how the faces dry; default `"receding-front"` at 100 °C */
  readonly drying?: DryingLaw | Drying;
  /** cells over half the thickness; default 12, in `simulatePiece` 8 */
  readonly cells?: number;
  /** error of one time step, as a share of the heat between start and air [-]; default 2e-4, in `simulatePiece` 5e-4 */
  readonly tolerance?: number;
  /** steps of this size throughout [min], for studies of convergence; default: steps that adapt */
  readonly fixedStepMin?: number;
}

/**
 * Temperatures, ice, drying and crust of a slab over time, from freezing to crisping, by the enthalpy method.
 *
 * ρ·∂h/∂t = ∂²φ/∂x² on cells of equal width, φ = ∫k·dT Kirchhoff's potential, h(T) and k(T) of `enthalpyAt` and
 * `conductivityAt`; at a face (Ta − Tfront)/(1/h + s/kc) = heat into the core + Lv·vapour, s the dry crust. The
 * wet core shrinks as the front recedes (moving grid); what the crust held of sensible heat leaves with it. Time steps
 * are stabilised Runge-Kutta-Chebyshev of second order.
 *
 * @returns a `HeatRun`; read it with `timeWhen` and `valueAt`
 *
 * Range: wide slabs, no edges; even food; −40 °C up. Left out: drip, shrinkage other than the crust, swelling, moisture
 * that moves inside. With a 100 °C front alone the crust starts late in dry air; `"wet-front"` dries from the start.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const run = simulateSlab({ food, thicknessMm: 6.35, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 15 });
 * timeWhen(run, { column: "coreC", value: 74 }); // → 4.34
 * valueAt(run, "crustMm", 15); // → 1.16
 *
 * Reference: enthalpy method as in Pham Q.T. (2014), Food Freezing and Thawing Calculations; receding front after Farkas,
 * Singh & Rumsey (1996), Journal of Food Engineering 29:211-226.
 */
export function simulateSlab(options: SimulateSlabOptions): HeatRun {
  const where = "simulateSlab";
  const { food, startC, stopCoreC, cells = 12, tolerance = 2e-4, fixedStepMin } = options;
  checkThermalModel(food, `${where}: food`);
  const thicknessMm = within(
    positive(options.thicknessMm, `${where}: thicknessMm`, "mm"),
    0.1,
    500,
    `${where}: thicknessMm`,
    "mm",
  );
  within(startC, -60, 120, `${where}: startC`, "°C");
  const endMin = positive(options.endMin, `${where}: endMin`, "min");
  checkNumerics(cells, tolerance, fixedStepMin, where);
  const above = faceAir(options.airC, options.coefficientWm2K, where, "");
  const below = faceAir(
    options.airBelowC ?? options.airC,
    options.coefficientBelowWm2K ?? options.coefficientWm2K,
    where,
    "Below",
  );
  const { constants, crustWaterKgM3 } = dryingConstants(options.drying, food, where);
  const outcome = solveBox({
    food,
    startC,
    thicknessM: thicknessMm / 1000,
    above,
    below,
    flipsS: flipsS(options.flipMin, where),
    drying: constants,
    crustWaterKgM3,
    cells,
    tolerance,
    fixedStepS: fixedStepMin === undefined ? undefined : fixedStepMin * 60,
    endS: endMin * 60,
    stopCoreC,
  });
  return heatRunOf(outcome, { thicknessMm, cells, notes: [] });
}

/** Checks the choices that belong to the method, not to the food. */
export function checkNumerics(cells: number, tolerance: number, fixedStepMin: number | undefined, where: string): void {
  if (!(Number.isInteger(cells) && cells >= 4 && cells <= 400))
    fail(`${where}: cells`, "must be a whole number from 4 to 400", cells);
  within(tolerance, 1e-8, 0.1, `${where}: tolerance`, "");
  if (fixedStepMin !== undefined) positive(fixedStepMin, `${where}: fixedStepMin`, "min");
}
