import { fail, notNegative, within } from "../../check/check";
import { leastSquares } from "../../fit/least-squares/least-squares";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";
import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import type { AirPoint } from "../box/face-air";
import type { DryingLaw } from "../box/surface-balance";
import { type HeatRun, valueAt } from "../solver/heat-run";
import { simulateEdgesIfTheyCount } from "../solver/simulate-edges-if-they-count";
import type { Drying } from "../solver/surroundings";
import type { ProbeTrace } from "./probe-trace";

/** A logged core and the body it was in. */
export interface FitProbeTraceOptions {
  readonly trace: ProbeTrace;
  /** channel of the core */
  readonly channel: string;
  /** channel of the air, or the air's temperature [°C] */
  readonly air: string | number;
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  /** leave both sides out for a whole slab */
  readonly lengthMm?: number;
  readonly widthMm?: number;
  /** coefficient below over the coefficient above [-]; default 1 */
  readonly belowShare?: number;
  /** use the trace from here [min]; the food must be even all through then; default 0 */
  readonly fromMin?: number;
  /** to here [min]; default its end */
  readonly toMin?: number;
  /** fit one factor on the food's conductivities too; default false */
  readonly fitConductivity?: boolean;
  /** how the faces dry; default `"receding-front"` */
  readonly drying?: DryingLaw | Drying;
}

/** A surface coefficient from a trace, with its doubt. */
export interface FitProbeTrace {
  readonly kind: "probe fit";
  /** [W/(m²·K)] */
  readonly coefficientWm2K: number;
  /** widened for readings that follow each other [W/(m²·K)]; null when the fit gives none */
  readonly standardErrorWm2K: number | null;
  /** 95 % [W/(m²·K)] */
  readonly intervalWm2K: readonly [number, number] | null;
  /** factor on the food's conductivities [-]; 1 when not fitted */
  readonly conductivityFactor: number;
  readonly conductivityFactorStandardError: number | null;
  /** correlation of the two estimates [-]; 0 when only one is fitted */
  readonly correlation: number;
  /** scatter of the core about the run [K] */
  readonly residualSdK: number;
  /** of one used reading with the next [-] */
  readonly autocorrelation: number;
  /** readings used, evenly spread over the stretch */
  readonly n: number;
  readonly converged: boolean;
  readonly reason: string;
  /** the run at the estimates; its time starts at fromMin */
  readonly run: HeatRun;
  /** the readings it was fitted to */
  readonly timeMin: readonly number[];
  readonly coreC: readonly number[];
  readonly notices: readonly string[];
}

const MOST_READINGS = 60;
const MOST_AIR_POINTS = 24;

/**
 * Fits the surface coefficient, and if asked one factor on the conductivity, to a logged core temperature.
 *
 * Minimises Σ(core read − core solved)² over up to 60 readings spread evenly; the body is solved by `simulateSlab` or
 * `simulatePiece` with the air as logged. Readings close in time repeat each other's error, so standard errors are
 * widened by √((1 + r)/(1 − r)), r the correlation of neighbouring residuals with Kendall's correction (1 + 3r)/n for
 * its bias.
 *
 * @returns coefficient [W/(m²·K)] with standard error and interval, residuals' scatter, the run
 *
 * Range: a body that is even all through at fromMin, a probe in its middle. The interval counts the scatter of the core
 * only: food, sizes, air and the probe's place count as known, so 5 % of thickness is about 5 % of coefficient more. One thickness tells h and k apart only
 * weakly: read `correlation`, and fit k with two thicknesses or not at all. A probe that sits off the middle reads
 * warm, and the coefficient comes out high.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const made = simulateSlab({ food, thicknessMm: 14, startC: -18, airC: 190, coefficientWm2K: 37, endMin: 11, drying: "none" });
 * const times = Array.from({ length: 41 }, (_, row) => row / 4);
 * const trace = readProbeTrace(["time_min,core_c", ...times.map((t) => `${t},${valueAt(made, "coreC", t).toFixed(2)}`)].join("\n"), { file: "slab.csv" });
 * fitProbeTrace({ trace, channel: "core", air: 190, food, thicknessMm: 14, drying: "none" }).coefficientWm2K; // → 37.0
 *
 * Reference: this library's solver; widening as in Bayley G.V., Hammersley J.M. (1946), Supplement to the Journal of
 * the Royal Statistical Society 8:184-197, for a first-order process.
 */
export function fitProbeTrace(options: FitProbeTraceOptions): FitProbeTrace {
  const where = "fitProbeTrace";
  const { trace, food, belowShare = 1, fromMin = 0, fitConductivity = false } = options;
  checkThermalModel(food, `${where}: food`);
  notNegative(belowShare, `${where}: belowShare`, "");
  const lastMin = trace.timeMin[trace.timeMin.length - 1];
  within(fromMin, 0, lastMin, `${where}: fromMin`, "min");
  const toMin = within(options.toMin ?? lastMin, fromMin, lastMin, `${where}: toMin`, "min");
  const core = readings(trace, options.channel, fromMin, toMin, MOST_READINGS, where);
  if (core.length < 6) fail(`${where}: trace`, "must hold at least 6 readings between fromMin and toMin", core.length);
  const air: number | readonly AirPoint[] =
    typeof options.air === "number"
      ? options.air
      : readings(trace, options.air, fromMin, toMin, MOST_AIR_POINTS, where).map(({ timeMin, temperatureC }) => ({
          timeMin,
          airC: temperatureC,
        }));
  const startC = core[0].temperatureC;
  const endMin = core[core.length - 1].timeMin;
  const meanAirC =
    typeof air === "number" ? air : air.reduce((sum, point) => sum + point.airC, 0) / Math.max(1, air.length);
  const moved = core[core.length - 1].temperatureC - startC;
  if (!(Math.sign(moved) === Math.sign(meanAirC - startC) && Math.abs(moved) > 2))
    fail(
      `${where}: trace`,
      `must move by more than 2 K towards the air at ${meanAirC.toFixed(0)} °C`,
      `${moved.toFixed(1)} K`,
    );

  const solve = (coefficientWm2K: number, factor: number): HeatRun =>
    simulateEdgesIfTheyCount({
      food: {
        ...food,
        thawedConductivityWmK: food.thawedConductivityWmK * factor,
        frozenConductivityWmK: food.frozenConductivityWmK * factor,
      },
      thicknessMm: options.thicknessMm,
      lengthMm: options.lengthMm,
      widthMm: options.widthMm,
      startC,
      airC: air,
      coefficientWm2K,
      coefficientBelowWm2K: coefficientWm2K * belowShare,
      drying: options.drying,
      endMin,
    });
  // the first reading is the start itself and says nothing
  const used = core.slice(1);
  const residuals = ({ coefficient, factor }: { coefficient: number; factor: number }): Float64Array => {
    const run = solve(coefficient, factor);
    const ranTo = run.timeMin[run.timeMin.length - 1];
    return Float64Array.from(
      used,
      ({ timeMin, temperatureC }) => temperatureC - valueAt(run, "coreC", Math.min(timeMin, ranTo)),
    );
  };
  const fit = leastSquares({
    model: "core of a slab or piece",
    parameters: {
      coefficient: { start: 25, lower: 0.5, upper: 1000, scale: "log" },
      factor: { start: 1, lower: 0.2, upper: 5, scale: "log", fixed: !fitConductivity },
    },
    residuals,
    relativeStep: 0.01,
    maxIterations: 40,
  });

  const { coefficient, factor } = fit.parameters;
  const found = neighbours(fit.residuals);
  const autocorrelation = Math.min(0.95, Math.max(0, found + (1 + 3 * found) / used.length));
  const widening = Math.sqrt((1 + autocorrelation) / (1 - autocorrelation));
  const standardErrorWm2K = coefficient.standardError === null ? null : coefficient.standardError * widening;
  const left = Math.max(1, Math.round(fit.degreesOfFreedom / widening ** 2));
  const reach = standardErrorWm2K === null ? null : studentTQuantile(0.975, left) * standardErrorWm2K;
  const spread = reach === null ? null : Math.exp(reach / coefficient.estimate);
  const notices = [
    ...fit.notices,
    ...trace.gaps
      .filter((gap) => gap.toMin > fromMin && gap.fromMin < toMin)
      .map((gap) => `The trace has a gap from ${gap.fromMin.toFixed(1)} to ${gap.toMin.toFixed(1)} min.`),
  ];
  if (fit.residualSd > 3)
    notices.push(
      `The core lies ${fit.residualSd.toFixed(1)} K about the run: check start, size, place of the probe, drying.`,
    );
  return Object.freeze({
    kind: "probe fit" as const,
    coefficientWm2K: coefficient.estimate,
    standardErrorWm2K,
    intervalWm2K: spread === null ? null : ([coefficient.estimate / spread, coefficient.estimate * spread] as const),
    conductivityFactor: factor.estimate,
    conductivityFactorStandardError: factor.standardError === null ? null : factor.standardError * widening,
    correlation: fitConductivity ? fit.correlation[0][1] : 0,
    residualSdK: fit.residualSd,
    autocorrelation,
    n: used.length,
    converged: fit.converged,
    reason: fit.reason,
    run: solve(coefficient.estimate, factor.estimate),
    timeMin: used.map(({ timeMin }) => timeMin),
    coreC: used.map(({ temperatureC }) => temperatureC),
    notices,
  });
}

interface Reading {
  /** from fromMin [min] */
  readonly timeMin: number;
  readonly temperatureC: number;
}

/** Readings of a channel spread evenly over a stretch: each the mean of what lies about it, the first as it stands. */
function readings(
  trace: ProbeTrace,
  channelName: string,
  fromMin: number,
  toMin: number,
  most: number,
  where: string,
): Reading[] {
  const channel = trace.channels.find((candidate) => candidate.name === channelName);
  if (!channel)
    return fail(
      `${where}: channel`,
      `must be one of ${trace.channels.map(({ name }) => name).join(", ")}`,
      channelName,
    );
  const rows: number[] = [];
  for (let row = 0; row < trace.timeMin.length; row++)
    if (trace.timeMin[row] >= fromMin && trace.timeMin[row] <= toMin && !Number.isNaN(channel.temperatureC[row]))
      rows.push(row);
  const block = Math.max(1, Math.ceil(rows.length / most));
  const means: Reading[] = [];
  if (rows.length > 0)
    means.push({ timeMin: trace.timeMin[rows[0]] - fromMin, temperatureC: channel.temperatureC[rows[0]] });
  for (let start = 1; start < rows.length; start += block) {
    const some = rows.slice(start, start + block);
    const mean = (read: (row: number) => number): number => some.reduce((sum, row) => sum + read(row), 0) / some.length;
    means.push({
      timeMin: mean((row) => trace.timeMin[row]) - fromMin,
      temperatureC: mean((row) => channel.temperatureC[row]),
    });
  }
  return means;
}

/** Correlation of each value with the next. */
function neighbours(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  let [top, bottom] = [0, 0];
  for (let at = 0; at < values.length; at++) {
    bottom += (values[at] - mean) ** 2;
    if (at > 0) top += (values[at] - mean) * (values[at - 1] - mean);
  }
  return bottom === 0 ? 0 : top / bottom;
}
