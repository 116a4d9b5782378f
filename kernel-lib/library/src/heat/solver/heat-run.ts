import { fail, finite } from "../../check/check";
import type { BoxOutcome } from "../box/box-problem";
import { passesZero, stepCubic } from "../box/step-cubic";

/** Temperatures along the thickness, through the middle of the body. */
export interface HeatProfile {
  /** height above the underside as it lay at the start, within the part that is still wet [mm]; one array a time */
  readonly heightMm: readonly (readonly number[])[];
  /** [°C]; one array a time, one value a height */
  readonly temperatureC: readonly (readonly number[])[];
}

/** What a slab or piece did over time. Each array holds one value for each time. */
export interface HeatRun {
  readonly kind: "heat run";
  /** `"slab"`: no edges; `"piece"`: all six faces */
  readonly body: "slab" | "piece";
  readonly thicknessMm: number;
  readonly lengthMm?: number;
  readonly widthMm?: number;
  readonly timeMin: readonly number[];
  /** the slowest point: coldest while heating, warmest while cooling [°C] */
  readonly coreC: readonly number[];
  /** in the middle of the thickness as it was at the start: the core too, where both faces are heated alike [°C] */
  readonly midPlaneC: readonly number[];
  /** outer surface in the middle of the face that lay on top at the start, the crust's where there is one [°C] */
  readonly surfaceC: readonly number[];
  /** the same of the face that lay below, on the pan or the rack [°C] */
  readonly surfaceBelowC: readonly number[];
  /** over the part that is still wet [°C] */
  readonly meanC: readonly number[];
  /** how fast the five of them change [K/min] */
  readonly coreRateKMin: readonly number[];
  readonly midPlaneRateKMin: readonly number[];
  readonly surfaceRateKMin: readonly number[];
  readonly surfaceBelowRateKMin: readonly number[];
  readonly meanRateKMin: readonly number[];
  /** water evaporated, of the mass at the start [%]; drip is not in it */
  readonly waterLostPercent: readonly number[];
  /** dry crust at the face that lay on top at the start [mm] */
  readonly crustMm: readonly number[];
  /** dry crust at the other face [mm] */
  readonly crustBelowMm: readonly number[];
  /** ice, of the mass at the start [%] */
  readonly icePercent: readonly number[];
  readonly profile: HeatProfile;
  /** the core has no ice left [min]; null when it still has some at the end, or had none at the start */
  readonly thawedMin: number | null;
  readonly stopped: "end of the run" | "core reached its target" | "all water gone";
  /** heat in − heat stored − heat carried off by water, as a share of the heat in [-] */
  readonly energyBalanceError: number;
  /** heat from the air [kJ] for the whole piece; [kJ/m²] of area for a slab */
  readonly heatInKJ: number;
  /** cells over half the thickness */
  readonly cells: number;
  readonly steps: number;
  /** what the run rests on and where it ends */
  readonly notes: readonly string[];
}

/** The columns of a `HeatRun` that change over time. */
export type HeatColumn =
  | "coreC"
  | "midPlaneC"
  | "surfaceC"
  | "surfaceBelowC"
  | "meanC"
  | "waterLostPercent"
  | "crustMm"
  | "crustBelowMm"
  | "icePercent";

const RATE_OF = {
  coreC: "coreRateKMin",
  midPlaneC: "midPlaneRateKMin",
  surfaceC: "surfaceRateKMin",
  surfaceBelowC: "surfaceBelowRateKMin",
  meanC: "meanRateKMin",
  waterLostPercent: null,
  crustMm: null,
  crustBelowMm: null,
  icePercent: null,
} as const satisfies Readonly<Record<HeatColumn, keyof HeatRun | null>>;

const UNIT: Readonly<Record<HeatColumn, string>> = {
  coreC: "°C",
  midPlaneC: "°C",
  surfaceC: "°C",
  surfaceBelowC: "°C",
  meanC: "°C",
  waterLostPercent: "%",
  crustMm: "mm",
  crustBelowMm: "mm",
  icePercent: "%",
};

/** Turns the solver's SI record into a run in minutes, mm and %. */
export function heatRunOf(
  outcome: BoxOutcome,
  body: {
    readonly thicknessMm: number;
    readonly lengthMm?: number;
    readonly widthMm?: number;
    readonly cells: number;
    readonly notes: readonly string[];
  },
): HeatRun {
  const { record } = outcome;
  const column = (values: Float64Array, factor: number): readonly number[] =>
    Object.freeze(Array.from(values, (value) => value * factor));
  const heightMm: number[][] = [];
  const temperatureC: number[][] = [];
  for (let row = 0; row < record.rows; row++) {
    const below = record.crustBelowM[row] * 1000;
    const wet = body.thicknessMm - below - record.crustAboveM[row] * 1000;
    const start = row * record.nodes;
    const heights = new Array<number>(record.nodes);
    const temperatures = new Array<number>(record.nodes);
    for (let node = 0; node < record.nodes; node++) {
      heights[node] = below + wet * record.profilePlace[node];
      temperatures[node] = record.profileC[start + node];
    }
    heightMm.push(heights);
    temperatureC.push(temperatures);
  }
  const notes = [...body.notes];
  if (outcome.allWaterGone)
    notes.push(`All water was gone after ${(record.timeS[record.rows - 1] / 60).toFixed(1)} min; the run ends there.`);
  const isPiece = body.lengthMm !== undefined;
  return Object.freeze({
    kind: "heat run" as const,
    body: isPiece ? ("piece" as const) : ("slab" as const),
    thicknessMm: body.thicknessMm,
    ...(isPiece ? { lengthMm: body.lengthMm, widthMm: body.widthMm } : {}),
    timeMin: column(record.timeS, 1 / 60),
    coreC: column(record.coreC, 1),
    midPlaneC: column(record.midPlaneC, 1),
    surfaceC: column(record.surfaceC, 1),
    surfaceBelowC: column(record.surfaceBelowC, 1),
    meanC: column(record.meanC, 1),
    coreRateKMin: column(record.coreRate, 60),
    midPlaneRateKMin: column(record.midPlaneRate, 60),
    surfaceRateKMin: column(record.surfaceRate, 60),
    surfaceBelowRateKMin: column(record.surfaceBelowRate, 60),
    meanRateKMin: column(record.meanRate, 60),
    waterLostPercent: column(record.waterLostFraction, 100),
    crustMm: column(record.crustAboveM, 1000),
    crustBelowMm: column(record.crustBelowM, 1000),
    icePercent: column(record.iceFraction, 100),
    profile: Object.freeze({ heightMm, temperatureC }),
    thawedMin: outcome.thawedS === undefined ? null : outcome.thawedS / 60,
    stopped: outcome.allWaterGone
      ? ("all water gone" as const)
      : outcome.coreReached
        ? ("core reached its target" as const)
        : ("end of the run" as const),
    energyBalanceError: outcome.energyBalanceError,
    heatInKJ: outcome.heatInJ / 1000,
    cells: body.cells,
    steps: outcome.steps,
    notes: Object.freeze(notes),
  });
}

/** Value at the share `u` between two rows: a cubic through values and slopes, or a straight line without slopes. */
function between(run: HeatRun, column: HeatColumn, row: number, u: number): number {
  const values = run[column];
  const [from, to] = [values[row], values[row + 1]];
  const rates = RATE_OF[column];
  if (rates === null) return from + u * (to - from);
  const span = run.timeMin[row + 1] - run.timeMin[row];
  return stepCubic(from, to, run[rates][row] * span, run[rates][row + 1] * span, u);
}

function checkColumn(column: string, where: string): void {
  if (!Object.hasOwn(UNIT, column)) fail(`${where}: column`, `must be one of ${Object.keys(UNIT).join(", ")}`, column);
}

/** What `timeWhen` looks for. */
export interface TimeWhenOptions {
  readonly column: HeatColumn;
  /** value to pass, in the column's own unit */
  readonly value: number;
  /** look from here on [min]; default 0 */
  readonly afterMin?: number;
}

/**
 * First time at which a column of a run passes a value, between its steps by a cubic.
 *
 * @returns time [min]; throws when the run never passes the value, naming how far it got
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const run = simulateSlab({ food, thicknessMm: 12.7, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 15 });
 * timeWhen(run, { column: "coreC", value: 74 }); // → 9.77
 * timeWhen(run, { column: "coreC", value: 140 }); // throws "must pass 140 °C within the run"
 */
export function timeWhen(run: HeatRun, options: TimeWhenOptions): number {
  const { column, value, afterMin = 0 } = options;
  checkColumn(column, "timeWhen");
  finite(value, "timeWhen: value", UNIT[column]);
  const values = run[column];
  for (let row = 0; row + 1 < values.length; row++) {
    if (run.timeMin[row + 1] < afterMin) continue;
    const from = values[row] - value;
    if (from === 0 && run.timeMin[row] >= afterMin) return run.timeMin[row];
    if (from < 0 === values[row + 1] - value < 0) continue;
    const share = passesZero((u) => between(run, column, row, u) - value);
    const time = run.timeMin[row] + share * (run.timeMin[row + 1] - run.timeMin[row]);
    if (time >= afterMin) return time;
  }
  const last = run.timeMin.length - 1;
  return fail(
    `timeWhen: ${column}`,
    `must pass ${value} ${UNIT[column]} within the run of ${run.timeMin[last].toFixed(1)} min (it went from ${values[0].toFixed(2)} to ${values[last].toFixed(2)})`,
    value,
  );
}

/**
 * Value of a column of a run at a time, between its steps by a cubic.
 *
 * @returns in the column's own unit; throws outside the run
 */
export function valueAt(run: HeatRun, column: HeatColumn, timeMin: number): number {
  checkColumn(column, "valueAt");
  const last = run.timeMin.length - 1;
  if (!(timeMin >= 0 && timeMin <= run.timeMin[last] + 1e-9))
    fail("valueAt: timeMin", `must lie within the run, 0 to ${run.timeMin[last].toFixed(2)} min`, timeMin);
  let row = 0;
  while (row + 1 < last && run.timeMin[row + 1] < timeMin) row++;
  const u = (timeMin - run.timeMin[row]) / (run.timeMin[row + 1] - run.timeMin[row]);
  return between(run, column, row, Math.min(1, u));
}
