import { notNegative, positive, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { enthalpyAt } from "../../food/thermal/enthalpy";
import type { ThermalModel } from "../../food/thermal/thermal-properties";

/** Food that goes into the freezer. */
export interface FreezerGoods {
  readonly food: ThermalModel;
  readonly massKg: number;
  /** mean of the food as it goes in (°C) */
  readonly fromC: number;
}

/** What `freezerLoad` works from. */
export interface FreezerLoadOptions {
  readonly goods: readonly FreezerGoods[];
  /** time in which they are to be frozen (min), from `freezeToCut` or `flashFreeze` */
  readonly withinMin: number;
  /** what the freezer takes away beside its own losses (W): from `pullDownW`, or a stated guess */
  readonly removesW: number;
  /** that may be off by this share either way [-]; default 0.3, our judgement */
  readonly relativeError?: number;
  /** food that lies in the freezer already (kg) */
  readonly storedKg: number;
  /** as cold as the freezer (°C); default −18 */
  readonly storedC?: number;
  /** stored food stays at or below this (°C); default −12, our judgement: quality, and far from thawing */
  readonly warmestC?: number;
}

/** Whether a freezer can take it, and how warm what lies there gets. */
export interface FreezerLoad {
  readonly kind: "freezer load";
  /** to take away until all is as cold as the freezer (kJ) */
  readonly heatKJ: number;
  /** water that turns to ice (kg an hour over the time given) */
  readonly iceKgPerHour: number;
  /** what would take all that away in the time (W) */
  readonly neededW: number;
  /** until all is away, with the range of the freezer's doubt (min) */
  readonly takesMin: number;
  readonly takesRangeMin: readonly [number, number];
  /** stored food at its warmest if it has to take up what the freezer does not (°C); with the range, worst last */
  readonly storedToC: number;
  readonly storedToRangeC: readonly [number, number];
  /** how much of the goods may go in at once so that stored food stays cold, even with a weak freezer [-] */
  readonly shareAtOnce: number;
  readonly sentence: string;
  readonly caution: string;
}

/** Frozen food of about two thirds water: heat that it takes up, thawing a little on the way, is left out, so that it gets too warm here rather than too cold (kJ/(kg·K)). */
export const STORED_KJ_KG_K = 2;

/**
 * What a load asks of a freezer: heat and ice, how long it takes, and how warm the food that lies there gets when the
 * freezer cannot keep up.
 *
 * heat = Σ m·(h(from) − h(freezer)); what is not taken away in the time goes into the stored food: ΔT = (heat − P·t)/(m·c).
 * All of the rest goes there and nothing into air and walls: the warm end.
 *
 * @returns heat (kJ), power (W), times (min), temperature of stored food (°C), how much at once
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const load = freezerLoad({ goods: [{ food, massKg: 4, fromC: 5 }], withinMin: 120, removesW: 100, storedKg: 20 });
 * load.heatKJ; // → 1036.7
 * load.storedToC; // → -10.1
 */
export function freezerLoad(options: FreezerLoadOptions): FreezerLoad {
  const where = "freezerLoad";
  const { goods, relativeError = 0.3, storedC = -18, warmestC = -12 } = options;
  const withinMin = positive(options.withinMin, `${where}: withinMin`, "min");
  const removesW = positive(options.removesW, `${where}: removesW`, "W");
  const storedKg = notNegative(options.storedKg, `${where}: storedKg`, "kg");
  within(relativeError, 0, 0.9, `${where}: relativeError`, "");
  within(storedC, -60, -5, `${where}: storedC`, "°C");
  within(warmestC, storedC, -2, `${where}: warmestC`, "°C");
  let heatKJ = 0;
  let iceKg = 0;
  for (const [at, { food, massKg, fromC }] of goods.entries()) {
    notNegative(massKg, `${where}: goods ${at + 1}: massKg`, "kg");
    within(fromC, storedC, 100, `${where}: goods ${at + 1}: fromC`, "°C (the freezer's and more)");
    const one = freezingHeat({ food, massKg, fromC, toC: storedC });
    heatKJ += one.heatKJ;
    iceKg += one.iceKg;
  }
  const minutesBy = (watts: number): number => (heatKJ * 1000) / watts / 60;
  const storedBy = (watts: number, share = 1): number => {
    const left = Math.max(0, share * heatKJ - (watts * withinMin * 60) / 1000);
    if (left === 0) return storedC;
    return storedKg === 0 ? Number.POSITIVE_INFINITY : storedC + left / (storedKg * STORED_KJ_KG_K);
  };
  const [weak, strong] = [removesW * (1 - relativeError), removesW * (1 + relativeError)];
  const mayTake = (weak * withinMin * 60) / 1000 + (warmestC - storedC) * storedKg * STORED_KJ_KG_K;
  const shareAtOnce = heatKJ === 0 ? 1 : Math.min(1, mayTake / heatKJ);
  const storedToC = storedBy(removesW);
  const percent = Math.floor(100 * shareAtOnce);
  return freezeDeep({
    kind: "freezer load" as const,
    heatKJ,
    iceKgPerHour: (iceKg * 60) / withinMin,
    neededW: (heatKJ * 1000) / (withinMin * 60),
    takesMin: minutesBy(removesW),
    takesRangeMin: [minutesBy(strong), minutesBy(weak)] as const,
    storedToC,
    storedToRangeC: [storedBy(strong), storedBy(weak)] as const,
    shareAtOnce,
    sentence:
      shareAtOnce === 1
        ? `All of it may go in at once: it takes ${Math.ceil(minutesBy(removesW))} min of the freezer's power, and what lies there stays cold.`
        : `Put in ${percent} % of it and wait: all at once would warm what lies there beyond ${warmestC} °C.`,
    caution:
      "An estimate from heat alone. Read the freezer's thermometer while warm food goes in; frozen food is kept frozen (FDA Food Code 3-501.11), and what has thawed is for your local food code to judge.",
  });
}

/** What food gives away on its way from one temperature to a lower one (kJ), and the water in it that turns to ice (kg). */
export function freezingHeat({ food, massKg, fromC, toC }: FreezerGoods & { readonly toC: number }): {
  readonly heatKJ: number;
  readonly iceKg: number;
} {
  return {
    heatKJ: massKg * (enthalpyAt(food, fromC) - enthalpyAt(food, toC)),
    iceKg: massKg * (iceOf(food, toC) - iceOf(food, fromC)),
  };
}

/** Ice at a temperature, of the mass [-]: the latent heat that the ice curve has given up, over that of water. */
function iceOf({ freezingPointC, latentKJkg }: ThermalModel, celsius: number): number {
  return celsius >= freezingPointC ? 0 : (latentKJkg / 333.6) * (1 - freezingPointC / celsius);
}

/** A pull-down that was logged: closed containers of water in the freezer. */
export interface PullDownOptions {
  readonly waterKg: number;
  /** as it went in (°C), above 0 */
  readonly fromC: number;
  /** as it came out, frozen through (°C) */
  readonly toC: number;
  readonly minutes: number;
}

/**
 * What a freezer takes away beside its own losses (W), from a log of water that it froze.
 *
 * P = m·(4.19·T₁ + 333.6 − 2.05·T₂)/t, T₁ above and T₂ below 0 °C.
 *
 * @example
 * pullDownW({ waterKg: 2, fromC: 15, toC: -10, minutes: 300 }); // → 46.3
 */
export function pullDownW({ waterKg, fromC, toC, minutes }: PullDownOptions): number {
  const where = "pullDownW";
  positive(waterKg, `${where}: waterKg`, "kg");
  within(fromC, 0, 100, `${where}: fromC`, "°C");
  within(toC, -60, 0, `${where}: toC`, "°C");
  return (waterKg * (4.19 * fromC + 333.6 - 2.05 * toC) * 1000) / (positive(minutes, `${where}: minutes`, "min") * 60);
}
