import { fail, positive, within } from "../../check/check";
import { flatPlateCoefficient, naturalConvectionCoefficient } from "../coefficient/air-coefficient";
import { airProperties } from "../coefficient/air-properties";
import { radiationCoefficient } from "../coefficient/radiation-coefficient";

/** How a pan stands in a freezer. */
export interface FreezerCoefficientsOptions {
  /** freezer air [°C] */
  readonly airC: number;
  /** default `"still"`, a chest or upright freezer without a fan at work */
  readonly airflow?: "still" | "fan";
  /** speed of the air with a fan [m/s]; default 2 */
  readonly airSpeedMs?: number;
  /** `"rack"`: air all round (default); `"shelf"`: stands on a shelf; `"insulated"`: on something that takes no heat */
  readonly restsOn?: "rack" | "shelf" | "insulated";
  /** a lid or a wrap that stands this far above the food [mm]; left out: open */
  readonly lidGapMm?: number;
  /** clear height to the pan above and below in a stack [mm]; left out: the pan stands alone */
  readonly stackGapMm?: number;
  /** inside of the pan: area over perimeter [mm]; default 86, a half sheet */
  readonly areaOverPerimeterMm?: number;
}

/** Coefficients of both faces of a pan of food, with their range. */
export interface FreezerCoefficients {
  /** [W/(m²·K)] */
  readonly coefficientWm2K: number;
  /** [W/(m²·K)] */
  readonly coefficientBelowWm2K: number;
  /** both may be off by this share either way [-]: correlations in a box full of shelves */
  readonly relativeError: number;
  readonly basis: string;
}

/**
 * Surface coefficients above and below a pan of food in a freezer, from correlations.
 *
 * Above: natural convection off a level face (still) or a laminar plate (fan), plus radiation (emissivity 0.9). A lid
 * puts an air gap k/gap plus radiation in series. Below: the same flow against bright metal (emissivity 0.2); on a
 * shelf half of it. In a stack the neighbours are as cold as the pan, so radiation falls away, and the air between is
 * thinned by gap/(gap + 20 mm), our judgement.
 *
 * @returns coefficients [W/(m²·K)] with their relative error, 0.4
 *
 * Range: a start, not an answer: one logged freezing curve of a pan (`fitProbeTrace`) is worth more.
 *
 * @example
 * freezerCoefficients({ airC: -18 }).coefficientWm2K; // → 8.96
 * freezerCoefficients({ airC: -18, airflow: "fan" }).coefficientWm2K; // → 13.2
 *
 * Reference: correlations of `naturalConvectionCoefficient`, `flatPlateCoefficient`, `radiationCoefficient`.
 */
export function freezerCoefficients(options: FreezerCoefficientsOptions): FreezerCoefficients {
  const where = "freezerCoefficients";
  const {
    airflow = "still",
    airSpeedMs = 2,
    restsOn = "rack",
    lidGapMm,
    stackGapMm,
    areaOverPerimeterMm = 86,
  } = options;
  const airC = within(options.airC, -80, -2, `${where}: airC`, "°C");
  positive(areaOverPerimeterMm, `${where}: areaOverPerimeterMm`, "mm");
  if (airflow !== "still" && airflow !== "fan") fail(`${where}: airflow`, "must be still or fan", airflow as unknown);
  if (!["rack", "shelf", "insulated"].includes(restsOn))
    fail(`${where}: restsOn`, "must be rack, shelf or insulated", restsOn as unknown);
  const surfaceC = Math.max(airC + 5, -3);
  const blown = (): number =>
    flatPlateCoefficient({
      airSpeedMs: within(airSpeedMs, 0.1, 20, `${where}: airSpeedMs`, "m/s"),
      lengthMm: 4 * areaOverPerimeterMm,
      filmC: (surfaceC + airC) / 2,
    }).coefficientWm2K;
  const still = (face: "level-free" | "level-trapped"): number =>
    naturalConvectionCoefficient({ surfaceC, airC, lengthMm: areaOverPerimeterMm, face }).coefficientWm2K;
  const between = stackGapMm === undefined ? 1 : positive(stackGapMm, `${where}: stackGapMm`, "mm") / (stackGapMm + 20);
  const radiation = (emissivity: number): number =>
    stackGapMm === undefined ? radiationCoefficient({ wallC: airC, surfaceC, emissivity }) : 0;
  const flow = (face: "level-free" | "level-trapped"): number => between * (airflow === "fan" ? blown() : still(face));

  let above = flow("level-free") + radiation(0.9);
  if (lidGapMm !== undefined) {
    const gapM = positive(lidGapMm, `${where}: lidGapMm`, "mm") / 1000;
    const inside =
      airProperties(surfaceC).conductivityWmK / gapM +
      radiationCoefficient({ wallC: surfaceC - 3, surfaceC, emissivity: 0.8 });
    above = 1 / (1 / above + 1 / inside);
  }
  const onRack = flow("level-trapped") + radiation(0.2);
  const below = restsOn === "rack" ? onRack : restsOn === "shelf" ? onRack / 2 : 0;
  const stack = stackGapMm === undefined ? "alone" : `stacked with ${stackGapMm} mm between`;
  return Object.freeze({
    coefficientWm2K: above,
    coefficientBelowWm2K: below,
    relativeError: 0.4,
    basis: `${airflow} air at ${airC} °C, ${stack}, on ${restsOn === "insulated" ? "insulation" : `a ${restsOn}`}, ${lidGapMm === undefined ? "open" : `lid ${lidGapMm} mm above`}; correlations, ±40 %`,
  });
}
