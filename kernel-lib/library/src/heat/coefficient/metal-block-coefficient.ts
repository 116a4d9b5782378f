import { fail, finite, positive, within } from "../../check/check";
import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";

/** A metal block with a thermometer inside, put where the food goes. */
export interface MetalBlockOptions {
  readonly massG: number;
  /** all of its surface that the air reaches [mm²] */
  readonly areaMm2: number;
  /** air of the appliance during the test [°C] */
  readonly airC: number;
  /** the block's temperature at two times or more; the first counts as the start */
  readonly readings: readonly { readonly timeMin: number; readonly temperatureC: number }[];
  /** specific heat of the metal [kJ/(kg·K)]; default 0.9, aluminium */
  readonly specificHeatKJkgK?: number;
  /** conductivity of the metal [W/(m·K)]; default 200, aluminium alloys; only to check that the block is even inside */
  readonly conductivityWmK?: number;
  /** chance that the interval holds the coefficient [-]; default 0.95 */
  readonly confidence?: number;
}

/** A surface coefficient with its doubt. */
export interface MetalBlockCoefficient {
  /** convection and radiation together [W/(m²·K)] */
  readonly coefficientWm2K: number;
  /** undefined with two readings only */
  readonly standardErrorWm2K?: number;
  readonly intervalWm2K?: readonly [number, number];
  /** number of readings */
  readonly n: number;
  /** h·V/(A·k) [-]: the block is even inside below 0.1 */
  readonly biot: number;
  readonly notes: readonly string[];
}

/**
 * Surface coefficient of an oven or air fryer from the warming of a metal block, the lumped-block method.
 *
 * ln[(Ta − T0)/(Ta − T)] = h·A·t/(m·c): the slope of the left side against time, by least squares, gives h.
 *
 * @returns coefficient [W/(m²·K)] with standard error and interval (scatter about the line; air, mass and area count
 * as known)
 *
 * Range: Biot number of the block below 0.1; readings at least 1 K away from the air. A shiny block takes up little
 * radiation, a blackened one more than food: the coefficient is that of the block's surface.
 *
 * @example
 * const block = { massG: 100, areaMm2: 11300, airC: 204 };
 * metalBlockCoefficient({ ...block, readings: [{ timeMin: 0, temperatureC: 20 }, { timeMin: 2, temperatureC: 103.2876 }] }).coefficientWm2K; // → 40.00
 *
 * Reference: method of Sakin, Kaymak-Ertekin & Ilicali (2009), Journal of Food Engineering 94:344-349.
 */
export function metalBlockCoefficient(options: MetalBlockOptions): MetalBlockCoefficient {
  const { airC, readings, specificHeatKJkgK = 0.9, conductivityWmK = 200, confidence = 0.95 } = options;
  const where = "metalBlockCoefficient";
  const massKg = positive(options.massG, `${where}: massG`, "g") / 1000;
  const areaM2 = positive(options.areaMm2, `${where}: areaMm2`, "mm²") / 1e6;
  within(specificHeatKJkgK, 0.1, 1.2, `${where}: specificHeatKJkgK`, "kJ/(kg·K)");
  positive(conductivityWmK, `${where}: conductivityWmK`, "W/(m·K)");
  within(confidence, 0.5, 0.999, `${where}: confidence`, "");
  finite(airC, `${where}: airC`, "°C");
  if (readings.length < 2) fail(`${where}: readings`, "must hold at least two readings", readings.length);
  const side = Math.sign(airC - readings[0].temperatureC);
  const points = readings.map(({ timeMin, temperatureC }, row) => {
    if (row > 0 && !(timeMin > readings[row - 1].timeMin))
      fail(`${where}: readings[${row}].timeMin`, "must be later than the reading before it", timeMin);
    if (!(side * (airC - temperatureC) >= 1))
      fail(
        `${where}: readings[${row}].temperatureC`,
        `must stay at least 1 K from the air at ${airC} °C`,
        temperatureC,
      );
    return { seconds: 60 * timeMin, log: -Math.log(side * (airC - temperatureC)) };
  });

  const n = points.length;
  const meanS = points.reduce((sum, point) => sum + point.seconds, 0) / n;
  const meanLog = points.reduce((sum, point) => sum + point.log, 0) / n;
  const spread = points.reduce((sum, point) => sum + (point.seconds - meanS) ** 2, 0);
  const slope = points.reduce((sum, point) => sum + (point.seconds - meanS) * (point.log - meanLog), 0) / spread;
  const perSlope = (massKg * specificHeatKJkgK * 1000) / areaM2;
  const coefficientWm2K = slope * perSlope;
  if (!(coefficientWm2K > 0))
    fail(
      `${where}: readings`,
      `must move towards the air at ${airC} °C`,
      readings.map((reading) => reading.temperatureC),
    );

  const biot = (coefficientWm2K * (massKg / 2700 / areaM2)) / conductivityWmK;
  const notes: string[] = [];
  if (biot > 0.1)
    notes.push(`Biot number ${biot.toFixed(2)} is above 0.1: the block is not even inside, take a thinner one.`);
  if (n === 2) {
    notes.push("Two readings give no scatter, so no standard error: take three or more.");
    return Object.freeze({ coefficientWm2K, n, biot, notes });
  }
  const left = points.reduce((sum, point) => sum + (point.log - meanLog - slope * (point.seconds - meanS)) ** 2, 0);
  const standardErrorWm2K = Math.sqrt(left / (n - 2) / spread) * perSlope;
  const reach = studentTQuantile(0.5 + confidence / 2, n - 2) * standardErrorWm2K;
  return Object.freeze({
    coefficientWm2K,
    standardErrorWm2K,
    intervalWm2K: [coefficientWm2K - reach, coefficientWm2K + reach] as const,
    n,
    biot,
    notes,
  });
}
