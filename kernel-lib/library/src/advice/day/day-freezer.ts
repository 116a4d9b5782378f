import { freezeDeep } from "../../check/freeze-deep";
import { STORED_KJ_KG_K } from "../../heat/freezing/freezer-load";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { clockText } from "../../units/clock-text";
import { ownMassText } from "../../units/mass-text";
import { temperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { SettledPlaces } from "./day-places";

/** Food that freezes between two times (minutes after midnight). */
export interface FreezingSpan {
  readonly startMin: number;
  readonly endMin: number;
  /** to take away until then (kJ) */
  readonly heatKJ: number;
  /** water that turns to ice (kg) */
  readonly iceKg: number;
}

/** What a day asks of the freezer, and how warm what lies there gets. */
export interface DayFreezer {
  /** most water that freezes in an hour (kg/h), and what would take that hour's heat away (W) */
  readonly iceKgPerHour: number;
  readonly neededW: number;
  /** when that hour begins (minutes after midnight) */
  readonly fullestMin: number;
  readonly removesW: number;
  /** food that lies there already, at its warmest (°C), with a strong and a weak freezer; null: there is none */
  readonly storedToC: number | null;
  readonly storedToRangeC: readonly [number, number] | null;
  /** when it is warmest (minutes after midnight) */
  readonly warmestMin: number;
  readonly keepsUp: boolean;
  readonly sentence: string;
}

/** Stored food stays at or below this (°C): our judgement, for quality, and far from thawing. */
export const WARMEST_STORED_C = -12;

/**
 * Heat over a day: what freezes gives its heat away evenly over the time it takes; what the freezer does not remove goes into the food
 * that lies there, and is removed once there is less to freeze.
 *
 * dQ/dt = Σ heatᵢ/tᵢ − P, Q ≥ 0; ΔT = Q/(m·c). None of it goes into air and walls: the warm end.
 */
export function dayFreezer(
  spans: readonly FreezingSpan[],
  { freezerC, freezerRemovesW, removesError, storedKg }: SettledPlaces,
  units: KitchenUnits,
): DayFreezer {
  const first = spans.length === 0 ? 0 : smallestOf(spans.map(({ startMin }) => startMin));
  const length = spans.length === 0 ? 0 : largestOf(spans.map(({ endMin }) => endMin)) - first;
  const kJ = new Float64Array(length);
  const ice = new Float64Array(length);
  for (const { startMin, endMin, heatKJ, iceKg } of spans)
    for (let at = startMin; at < endMin; at++) {
      kJ[at - first] += heatKJ / (endMin - startMin);
      ice[at - first] += iceKg / (endMin - startMin);
    }
  const window = Math.min(60, length);
  const sumFrom = (row: Float64Array, at: number): number =>
    row.subarray(at, at + window).reduce((sum, value) => sum + value, 0);
  let fullest = 0;
  for (let at = 0; at + window <= length; at++) if (sumFrom(kJ, at) > sumFrom(kJ, fullest) + 1e-9) fullest = at;
  const over = (watts: number): { readonly mostKJ: number; readonly at: number } => {
    let [left, mostKJ, when] = [0, 0, 0];
    for (let at = 0; at < length; at++) {
      left = Math.max(0, left + kJ[at] - (watts * 60) / 1000);
      if (left > mostKJ) [mostKJ, when] = [left, at + 1];
    }
    return { mostKJ, at: when };
  };
  const warmTo = (share: number): number =>
    freezerC + over(freezerRemovesW * (1 + share)).mostKJ / (storedKg * STORED_KJ_KG_K);
  const storedToC = storedKg === 0 ? null : warmTo(0);
  const range = storedKg === 0 ? null : ([warmTo(removesError), warmTo(-removesError)] as const);
  const neededW = window === 0 ? 0 : (sumFrom(kJ, fullest) * 1000) / (window * 60);
  const iceKgPerHour = window === 0 ? 0 : (sumFrom(ice, fullest) * 60) / window;
  const warmestMin = first + over(freezerRemovesW).at;
  const keepsUp = storedToC === null || storedToC <= WARMEST_STORED_C;
  const temperature = (celsius: number): string => temperatureText(celsius, units);
  const load = `At its fullest, from ${clockText(first + fullest, units)}, ${ownMassText(Math.round(1000 * iceKgPerHour), units)} of water freeze in an hour: that asks for ${Math.round(neededW)} W, and the freezer takes away ${Math.round(freezerRemovesW)} W, ${Math.round(freezerRemovesW * (1 - removesError))} to ${Math.round(freezerRemovesW * (1 + removesError))} W`;
  return freezeDeep({
    iceKgPerHour,
    neededW,
    fullestMin: first + fullest,
    removesW: freezerRemovesW,
    storedToC,
    storedToRangeC: range,
    warmestMin,
    keepsUp,
    sentence:
      storedToC === null || range === null
        ? `${load}. No food lies in it that could get warm; what is new takes longer where the freezer does not keep up.`
        : storedToC < freezerC + 0.5 && range[1] < freezerC + 0.5
          ? `${load}. What lies there stays cold.`
          : `${load}. What lies there gets up to ${temperature(storedToC)} warm at ${clockText(warmestMin, units)} (${temperature(range[0])} with a strong freezer, ${temperature(range[1])} with a weak one)${range[1] > WARMEST_STORED_C ? "; keep it on the far side, and read the freezer's thermometer" : ""}.`,
  });
}
