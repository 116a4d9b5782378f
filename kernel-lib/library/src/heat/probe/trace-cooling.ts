import { fail } from "../../check/check";
import { type CoolingCheck, type CoolingCheckOptions, coolingCheck } from "../../safety/cold/cooling-check";
import type { ProbeTrace } from "./probe-trace";

/** Channels that are not of the food. */
const NOT_FOOD = /air|oven|basket|ambient|room|set|wall|freezer|fridge|chamber/i;

/**
 * A logger's file of food that cools, against the limits of `coolingCheck`: at each time the warmest of its channels counts, without those
 * that are named after air. Times without a reading are left out.
 *
 * @param trace from `readProbeTrace`
 * @param from `"cooked"` (default) or `"ambient"`, as for `coolingCheck`
 *
 * @example
 * const trace = readProbeTrace("time_min,core_c,air_c\n0,62,-18\n30,40,-18\n80,20,-18\n200,4,-18\n", { file: "monday.csv" });
 * traceCooling(trace).verdict; // → "passes"
 *
 * Reference: FDA Food Code, 3-501.14.
 */
export function traceCooling(trace: ProbeTrace, from: CoolingCheckOptions["from"] = "cooked"): CoolingCheck {
  const food = trace.channels.filter(({ name }) => !NOT_FOOD.test(name));
  if (food.length === 0)
    fail(
      `traceCooling: ${trace.file}`,
      "must have a channel of the food, such as core_c",
      trace.channels.map(({ name }) => name).join(", "),
    );
  const readings = trace.timeMin.flatMap((timeMin, at) => {
    const warmestC = food.reduce((most, { temperatureC }) => {
      const celsius = temperatureC[at];
      return Number.isNaN(celsius) ? most : Math.max(most, celsius);
    }, Number.NEGATIVE_INFINITY);
    return Number.isFinite(warmestC) ? [{ timeMin, warmestC }] : [];
  });
  return coolingCheck({
    timesMin: readings.map(({ timeMin }) => timeMin),
    temperaturesC: readings.map(({ warmestC }) => warmestC),
    from,
  });
}
