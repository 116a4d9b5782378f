import { fail, finite } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";

/** A core that cools, read off a thermometer or predicted. */
export interface CoolingCheckOptions {
  /** times, rising (min) */
  readonly timesMin: readonly number[];
  /** core of the warmest piece at each time (°C) */
  readonly temperaturesC: readonly number[];
  /** `"cooked"` (default): cooked food that cools; `"ambient"`: made from ingredients at room temperature */
  readonly from?: "cooked" | "ambient";
}

/** One stage of cooling against its limit. */
export interface CoolingStage {
  /** the clock starts here (°C); null: with the first reading */
  readonly fromC: number | null;
  readonly toC: number;
  readonly limitMin: number;
  /** least and most that it took, by the readings to either side (min); null where the end was not reached or the start not seen */
  readonly tookMin: readonly [number, number] | null;
  /** null where the readings do not tell */
  readonly passes: boolean | null;
}

/** Whether food was cooled fast enough. */
export interface CoolingCheck {
  readonly kind: "cooling check";
  readonly verdict: "passes" | "fails" | "not enough data";
  readonly stages: readonly CoolingStage[];
  /** the verdict with its figures, for a cook */
  readonly sentence: string;
  /** what to do; null where nothing is */
  readonly todo: string | null;
  readonly source: string;
  readonly caution: string;
}

/** Temperatures (°C) and times (min) of the two-stage limit. */
export interface CoolingLimits {
  readonly startC: number;
  readonly firstC: number;
  readonly firstMin: number;
  readonly coldC: number;
  readonly cookedMin: number;
  readonly ambientMin: number;
}

/** Where the clock of cooked food starts, and the limits: FDA Food Code 3-501.14(A) and (B). */
export const COOLING_LIMITS: CoolingLimits = Object.freeze({
  startC: 57,
  firstC: 21,
  firstMin: 120,
  coldC: 5,
  cookedMin: 360,
  ambientMin: 240,
});

const SOURCE =
  "FDA Food Code 3-501.14, read in a state's print: cooked food from 57 to 21 °C (135 to 70 °F) within 2 h and to 5 °C (41 °F) within 6 h in all; food made from ingredients at room temperature to 5 °C within 4 h";

/**
 * Cooling against the two-stage limit: 57 to 21 °C within 2 h and 57 to 5 °C within 6 h in all; to 5 °C within 4 h for food
 * made from ingredients at room temperature.
 *
 * Between two readings nothing is taken for granted: a stage passes when it does with its start at the last reading that was
 * warm and its end at the first that was cold, and fails when it does even the other way round; between the two it says that
 * the readings do not tell. Food that warms again has not arrived.
 *
 * @returns verdict, stages with the least and the most they took, what to do
 *
 * @example
 * coolingCheck({ timesMin: [0, 30, 60, 90, 180, 300], temperaturesC: [60, 45, 30, 20, 10, 4] }).verdict; // → "passes"
 * coolingCheck({ timesMin: [0, 10, 150, 300], temperaturesC: [60, 55, 25, 4] }).verdict; // → "fails"
 * coolingCheck({ timesMin: [0, 100, 140, 300], temperaturesC: [60, 30, 15, 4] }).verdict; // → "not enough data"
 *
 * Reference: FDA Food Code, 3-501.14.
 */
export function coolingCheck(options: CoolingCheckOptions): CoolingCheck {
  const where = "coolingCheck";
  const { timesMin, temperaturesC, from = "cooked" } = options;
  if (from !== "cooked" && from !== "ambient") fail(`${where}: from`, "must be cooked or ambient", from as unknown);
  if (timesMin.length < 1 || timesMin.length !== temperaturesC.length)
    fail(`${where}: timesMin and temperaturesC`, "must hold readings, as many of one as of the other", [
      timesMin.length,
      temperaturesC.length,
    ]);
  for (const [at, timeMin] of timesMin.entries()) {
    finite(temperaturesC[at], `${where}: temperature ${at + 1}`, "°C");
    if (!(Number.isFinite(timeMin) && (at === 0 || timeMin > timesMin[at - 1])))
      fail(`${where}: time ${at + 1}`, "must be later than the one before (min)", timeMin);
  }
  const { startC, firstC, firstMin, coldC, cookedMin, ambientMin } = COOLING_LIMITS;
  const stage = (fromC: number | null, toC: number, limitMin: number): CoolingStage =>
    stageOf({ timesMin, temperaturesC, fromC, toC, limitMin });
  const stages =
    from === "cooked"
      ? [stage(startC, firstC, firstMin), stage(startC, coldC, cookedMin)]
      : [stage(null, coldC, ambientMin)];
  const failed = stages.find(({ passes }) => passes === false);
  const open = stages.find(({ passes }) => passes === null);
  const verdict = failed !== undefined ? "fails" : open !== undefined ? "not enough data" : "passes";
  const told = failed ?? open;
  return freezeDeep({
    kind: "cooling check" as const,
    verdict,
    stages,
    sentence:
      told === undefined
        ? `Cooled in time: ${stages.map(stageText).join(", ")}.`
        : `${wordOf(verdict)}: ${stageText(told)}.`,
    todo:
      verdict === "passes"
        ? null
        : verdict === "fails"
          ? "Throw it away, unless your licensed process authority decides otherwise. Next time cool it thinner, apart and in moving air, and start sooner."
          : "Take it as not cooled in time. Next time read the core of the warmest piece every ten minutes, from above 57 °C (135 °F) until it is at 5 °C (41 °F).",
    source: SOURCE,
    caution:
      "Local food codes and licensed practice come first. A predicted curve shows what to expect, a thermometer what was.",
  });
}

function wordOf(verdict: CoolingCheck["verdict"]): string {
  return verdict === "fails" ? "Not cooled in time" : "Not enough readings to tell";
}

function stageText({ fromC, toC, limitMin, tookMin }: CoolingStage): string {
  const inF = (celsius: number): string => String(Math.round(celsius * 1.8 + 32));
  const way =
    fromC === null ? `to ${toC} °C (${inF(toC)} °F)` : `${fromC} to ${toC} °C (${inF(fromC)} to ${inF(toC)} °F)`;
  if (tookMin === null) return `${way} not seen from start to end, ${limitMin / 60} h allowed`;
  const [least, most] = tookMin.map((min) => Math.ceil(min));
  const took = Number.isFinite(most)
    ? least === most
      ? `${most} min`
      : `${least} to ${most} min`
    : `over ${least} min`;
  return `${way} in ${took}, ${limitMin / 60} h allowed`;
}

interface StageOptions extends CoolingCheckOptions {
  readonly fromC: number | null;
  readonly toC: number;
  readonly limitMin: number;
}

function stageOf({ timesMin, temperaturesC, fromC, toC, limitMin }: StageOptions): CoolingStage {
  const stage = { fromC, toC, limitMin };
  const last = timesMin.length - 1;
  const lastWarm = fromC === null ? 0 : temperaturesC.findLastIndex((celsius) => celsius >= fromC);
  const unseen = fromC !== null && lastWarm === -1;
  const lastAbove = temperaturesC.findLastIndex((celsius) => celsius > toC);
  const startLatest = timesMin[fromC === null || unseen ? 0 : Math.min(last, lastWarm + 1)];
  if (lastAbove === last) {
    // not there yet: a failure once the time is over even so, else open
    const least = timesMin[last] - startLatest;
    return {
      ...stage,
      tookMin: least > limitMin ? [least, Number.POSITIVE_INFINITY] : null,
      passes: least > limitMin ? false : null,
    };
  }
  const endMin = timesMin[lastAbove + 1];
  const least = Math.max(0, (lastAbove === -1 ? timesMin[0] : timesMin[lastAbove]) - startLatest);
  if (unseen)
    return {
      ...stage,
      tookMin: least > limitMin ? [least, Number.POSITIVE_INFINITY] : null,
      passes: least > limitMin ? false : null,
    };
  const most = endMin - timesMin[lastWarm];
  return { ...stage, tookMin: [least, most], passes: most <= limitMin ? true : least > limitMin ? false : null };
}
