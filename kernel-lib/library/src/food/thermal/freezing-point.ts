import { fail, notNegative, within } from "../../check/check";
import { type Composition, checkComposition } from "../composition/composition";

/** What is dissolved in the water of a mix, all by mass of the whole mix [-]. */
export interface FreezingPointOptions {
  /** sodium chloride [-]; default 0; counted as part of the ash */
  readonly saltFraction?: number;
  /** sugars and other small dissolved carbohydrates [-]; default 0; counted as part of the carbohydrate */
  readonly sugarFraction?: number;
  /** mean molar mass of those sugars [g/mol]; default 342 (sucrose, maltose, lactose); glucose and fructose 180 */
  readonly sugarMolarMassGmol?: number;
}

/** An initial freezing point with its doubt. */
export interface FreezingPoint {
  /** temperature at which the first ice forms [°C] */
  readonly freezingPointC: number;
  /** standard error [K], 20 % of the depression (our judgement) and at least 0.35 K, the rms miss on four foods of the handbook */
  readonly standardErrorK: number;
  /** true where there is so little water that the value is only a floor, −20 °C */
  readonly tooDry: boolean;
  readonly source: string;
}

const ICE_POINT_K = 273.15;
const WATER_MOLAR_MASS = 18.015;
const GAS_CONSTANT = 8.314;
/** 333.6 kJ/kg of water, per mole [J/mol] */
const FUSION_J_MOL = 333.6 * WATER_MOLAR_MASS;
const COLDEST_C = -20;

/** Water that does not freeze: 0.4 kg for each kg of protein (ASHRAE Handbook - Refrigeration, chapter 9; from memory). */
export function boundWaterFraction(composition: Composition): number {
  return Math.min(composition.waterFraction, 0.4 * composition.proteinFraction);
}

/**
 * Initial freezing point of a mix from what is dissolved in its free water, after Raoult.
 *
 * 1/T0 − 1/Tf = −(R/(Mw·L0))·ln Xw, Xw the mole fraction of water among free water and solutes.
 *
 * Solutes: salt as two ions (58.44 g/mol); sugars at their molar mass; the rest of the ash as ions of 40 g/mol; small
 * nitrogen compounds of meat and pulses as 10 % of the protein at 110 g/mol. The last two are our judgement: they put
 * lean meat near −1.3 °C, inside the −1.0 to −1.7 °C usually given for it. A measured plateau of the mix always wins.
 *
 * @returns freezing point [°C], its standard error [K]
 *
 * Range: mixes with more free water than about twice their solutes; below −20 °C the answer is −20 °C and says so.
 *
 * @example
 * const chicken = { waterFraction: 0.65, proteinFraction: 0.19, fatFraction: 0.08, carbohydrateFraction: 0.05, fibreFraction: 0.005, ashFraction: 0.025 };
 * freezingPoint(chicken, { saltFraction: 0.015 }).freezingPointC; // → -2.956
 *
 * Reference: ideal-solution freezing point depression; heat of fusion 333.6 kJ/kg.
 */
export function freezingPoint(composition: Composition, options: FreezingPointOptions = {}): FreezingPoint {
  const { saltFraction = 0, sugarFraction = 0, sugarMolarMassGmol = 342 } = options;
  checkComposition(composition, "freezingPoint");
  notNegative(saltFraction, "freezingPoint: saltFraction", "");
  if (saltFraction > composition.ashFraction + 0.001)
    fail("freezingPoint: saltFraction", `must be at most the ash (${composition.ashFraction})`, saltFraction);
  notNegative(sugarFraction, "freezingPoint: sugarFraction", "");
  if (sugarFraction > composition.carbohydrateFraction + 0.001)
    fail(
      "freezingPoint: sugarFraction",
      `must be at most the carbohydrate (${composition.carbohydrateFraction})`,
      sugarFraction,
    );
  within(sugarMolarMassGmol, 60, 2000, "freezingPoint: sugarMolarMassGmol", "g/mol");

  const solutes =
    (2 * saltFraction) / 58.44 +
    sugarFraction / sugarMolarMassGmol +
    Math.max(0, composition.ashFraction - saltFraction) / 40 +
    (0.1 * composition.proteinFraction) / 110;
  const freeWater = (composition.waterFraction - boundWaterFraction(composition)) / WATER_MOLAR_MASS;
  const ideal =
    1 / (1 / ICE_POINT_K - (GAS_CONSTANT / FUSION_J_MOL) * Math.log(freeWater / (freeWater + solutes))) - ICE_POINT_K;
  const tooDry = !(ideal > COLDEST_C);
  const freezingPointC = tooDry ? COLDEST_C : Math.min(ideal, -0.05);
  return Object.freeze({
    freezingPointC,
    standardErrorK: Math.max(0.35, 0.2 * -freezingPointC),
    tooDry,
    source: "ideal solution from salt, sugars, ash and protein; a measured freezing plateau of the mix is better",
  });
}
