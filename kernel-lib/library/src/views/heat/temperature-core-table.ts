import { fail } from "../../check/check";
import type { CoreTime } from "../../heat/solver/core-time";
import { safeTemperatureText } from "../../units/safe-temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/** One body with the time its core takes. */
export interface CoreTimeRow {
  /** in words: `"14 × 27 × 70 mm stick"` */
  readonly label: string;
  readonly core: CoreTime;
}

/**
 * Core times side by side, with what the food is like by then; the limit, its source and the caution stand below.
 *
 * @param rows bodies with their `coreTime`
 * @param units the kitchen's own; default metric
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * temperatureCoreTable([{ label: "slab", core: coreTime({ food, thicknessMm: 12.7, airC: 204, coefficientWm2K: 40 }) }]).rows[0][1]; // → 9.77
 */
export function temperatureCoreTable(rows: readonly CoreTimeRow[], units: KitchenUnits = "metric"): Table {
  if (rows.length === 0) fail("temperatureCoreTable: rows", "must hold at least one body", rows);
  const limits = [...new Set(rows.map(({ core }) => atLeast(core.limitC, units)))];
  const table: Table = {
    kind: "table",
    title: `Time for the core to reach ${limits.join(", ")}`,
    columns: [
      { heading: "body" },
      { heading: "core at limit (min)", decimals: 1 },
      { heading: "if the surface stays wet (min)", decimals: 1 },
      { heading: "thawed (min)", decimals: 1 },
      { heading: "surface by then (°C)", decimals: 0 },
      { heading: "evaporated (% of mass)", decimals: 1 },
      { heading: "crust (mm)", decimals: 2 },
      { heading: "solved as" },
    ],
    rows: rows.map(({ label, core }) => [
      label,
      core.timeMin,
      core.wetSurfaceMin,
      core.thawedMin,
      core.surfaceC,
      core.waterLostPercent,
      core.crustMm,
      core.body,
    ]),
    notes: [
      rows[0].core.caution,
      ...new Set(rows.map(({ core }) => `Core limit ${atLeast(core.limitC, units)}: ${core.source}.`)),
    ],
  };
  return tableIn(table, units);
}

/** A temperature that the core must reach, never rounded down, in the kitchen's unit alone. */
function atLeast(limitC: number, units: KitchenUnits): string {
  return safeTemperatureText(limitC, units).replace(/ \(.*\)$/, "");
}
