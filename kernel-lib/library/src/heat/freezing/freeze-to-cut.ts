import { fail, positive, within } from "../../check/check";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { temperatureText } from "../../units/temperature-text";
import { type HeatRun, timeWhen } from "../solver/heat-run";
import { simulateSlab } from "../solver/simulate-slab";
import { CUTTING_LIMITS, type CuttingLimits, checkCuttingLimits } from "./cutting-limits";
import { runsOverDoubt, type TimeRange } from "./runs-over-doubt";

/** A pan of mix that goes into a freezer. */
export interface FreezeToCutOptions {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  /** freezer air [°C] */
  readonly airC: number;
  /** above [W/(m²·K)]; `freezerCoefficients` gives a start */
  readonly coefficientWm2K: number;
  /** below, through the pan [W/(m²·K)]; default as above */
  readonly coefficientBelowWm2K?: number;
  /** both coefficients may be off by this share either way [-]; default 0.4 */
  readonly relativeError?: number;
  /** mix as spread [°C]; default 5 */
  readonly startC?: number;
  /** default `CUTTING_LIMITS`, common practice */
  readonly limits?: CuttingLimits;
  /** core when the slab counts as hard through [°C]; default −10 */
  readonly hardThroughC?: number;
  /** slabs that lie flat on each other without a gap [-]; default 1 */
  readonly touching?: number;
}

/** When a slab in a freezer can be cut. */
export interface FreezeToCut {
  readonly kind: "freeze to cut";
  /** firm enough: mean at or below softAboveC */
  readonly firm: TimeRange;
  /** some part gets colder than brittleBelowC: too hard to cut from here; undefined when it never does */
  readonly brittle?: TimeRange;
  /** core at hardThroughC; undefined when the freezer cannot take it there */
  readonly hardThrough?: TimeRange;
  /** false when it turns brittle at the outside before it is firm inside: freeze hard, then temper (`temperToCut`) */
  readonly cutsOnTheWay: boolean;
  readonly limits: CuttingLimits;
  readonly limitsFrom: "caller" | "common practice, no source";
  readonly run: HeatRun;
  readonly notes: readonly string[];
}

/** One slab in the freezer: where it lies, how thick it is, when it can be cut. */
export interface FreezeToCutRow {
  /** pan or place in the freezer: `"half sheet on a rack"` */
  readonly label: string;
  readonly thicknessMm: number;
  readonly freezing: FreezeToCut;
}

/**
 * How long a pan of mix stays in the freezer until its slab can be cut, and until it is hard through.
 *
 * The slab is solved with its two coefficients; it can be cut from when its mean reaches softAboveC until its coldest
 * part reaches brittleBelowC. The range repeats the run with both coefficients up and down by their relative error.
 *
 * @returns times [min] with ranges, and the run
 *
 * Range: as `simulateSlab`; pan metal is left out (a 1 mm aluminium pan adds about 3 % to the heat of a 10 mm slab).
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const pan = freezeToCut({ food, thicknessMm: 10, airC: -18, coefficientWm2K: 9, coefficientBelowWm2K: 4 });
 * pan.firm.timeMin; // → 139
 * pan.cutsOnTheWay; // → true
 *
 * Reference: this library's enthalpy solver.
 */
export function freezeToCut(options: FreezeToCutOptions): FreezeToCut {
  const where = "freezeToCut";
  const { food, airC, startC = 5, relativeError = 0.4, hardThroughC = -10, touching = 1 } = options;
  checkThermalModel(food, `${where}: food`);
  const limits = checkCuttingLimits(options.limits ?? CUTTING_LIMITS, food.freezingPointC, where);
  const thicknessMm = positive(options.thicknessMm, `${where}: thicknessMm`, "mm");
  const coefficient = positive(options.coefficientWm2K, `${where}: coefficientWm2K`, "W/(m²·K)");
  const below = options.coefficientBelowWm2K ?? coefficient;
  within(relativeError, 0, 0.9, `${where}: relativeError`, "");
  within(startC, food.freezingPointC, 100, `${where}: startC`, "°C (from the freezing point up)");
  if (!(Number.isInteger(touching) && touching >= 1))
    fail(`${where}: touching`, "must be a whole number from 1", touching);
  if (!(airC < limits.softAboveC))
    fail(
      `${where}: airC`,
      `must be below ${limits.softAboveC} °C to firm the slab; its mean tends to ${airC} °C`,
      airC,
    );
  const canHarden = airC < hardThroughC - 0.5;

  const simulate = (factor: number): HeatRun => {
    const slab = {
      food,
      thicknessMm: thicknessMm * touching,
      startC,
      airC,
      coefficientWm2K: coefficient * factor,
      coefficientBelowWm2K: below * factor,
      drying: "none" as const,
    };
    const reachable = [hardThroughC, limits.brittleBelowC, limits.softAboveC].filter((targetC) => airC < targetC - 0.5);
    const stop = Math.min(smallestOf(reachable), limits.softAboveC - 0.1) - 0.1;
    return simulateSlab({ ...slab, endMin: longestMin(slab), stopCoreC: stop });
  };
  const { runs, range } = runsOverDoubt(relativeError, simulate);
  const coldestC = smallestOf(runs.map((run) => run.surfaceC[run.surfaceC.length - 1]));
  const firm = range((run) => timeWhen(run, { column: "meanC", value: limits.softAboveC }));
  const warmestEndC = largestOf(runs.map((run) => coldestAt(run, run.timeMin.length - 1)));
  const brittle =
    warmestEndC < limits.brittleBelowC ? range((run) => whenColdest(run, limits.brittleBelowC)) : undefined;
  const hardThrough = canHarden ? range((run) => timeWhen(run, { column: "coreC", value: hardThroughC })) : undefined;
  const cutsOnTheWay = brittle === undefined || brittle.timeMin > firm.timeMin;
  const both = (celsius: number): string => temperatureText(celsius, "metric");
  const notes: string[] = [];
  if (!options.limits) notes.push("Cutting limits are common practice without a source: note your own and pass them.");
  if (!cutsOnTheWay)
    notes.push(
      `The outside passes ${both(limits.brittleBelowC)} before the mean reaches ${both(limits.softAboveC)}: freeze it hard, then temper.`,
    );
  if (!canHarden) notes.push(`At ${both(airC)} the freezer cannot take the core to ${both(hardThroughC)}.`);
  if (brittle === undefined && coldestC > limits.brittleBelowC)
    notes.push(`No part gets colder than ${both(limits.brittleBelowC)} by the end of the run.`);
  return Object.freeze({
    kind: "freeze to cut" as const,
    firm,
    brittle,
    hardThrough,
    cutsOnTheWay,
    limits,
    limitsFrom: options.limits ? ("caller" as const) : ("common practice, no source" as const),
    run: runs[0],
    notes,
  });
}

/** A run long enough for any slab: all the heat at a tenth of the driving difference, from one face. */
function longestMin(slab: {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  readonly startC: number;
  readonly airC: number;
  readonly coefficientWm2K: number;
  readonly coefficientBelowWm2K: number;
}): number {
  const { food } = slab;
  const depthM = slab.thicknessMm / 1000;
  const heat = food.densityKgM3 * 1000 * (food.latentKJkg + 4 * (slab.startC - slab.airC)) * depthM;
  const h = Math.max(slab.coefficientWm2K, slab.coefficientBelowWm2K);
  return (20 * heat * (1 / h + depthM / food.thawedConductivityWmK)) / (food.freezingPointC - slab.airC) / 60;
}

/** Coldest place of the middle column at a row [°C]. */
function coldestAt(run: HeatRun, row: number): number {
  return smallestOf(run.profile.temperatureC[row]);
}

/** First time at which some place of the middle column is as cold as this [min]. */
function whenColdest(run: HeatRun, coldC: number): number {
  for (let row = 1; row < run.timeMin.length; row++) {
    const now = coldestAt(run, row);
    if (now > coldC) continue;
    const before = coldestAt(run, row - 1);
    return run.timeMin[row - 1] + ((before - coldC) / (before - now)) * (run.timeMin[row] - run.timeMin[row - 1]);
  }
  return Number.POSITIVE_INFINITY;
}
